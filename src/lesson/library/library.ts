/** The kit's own lessons, as the page loads them: one language at a time, English where there is no translation. */

import { present } from "../../sim/checked/present.ts";
import type { Fault } from "../../sim/faults.ts";
import type { Lesson } from "../lesson.ts";
import { withOwnWords } from "../own/own-keys.ts";
import { ownFiles } from "../own/own-source.ts";
import type { OwnReading } from "../own/read-own.ts";
import type { Reading } from "../read/read.ts";
import type { Page } from "../read/read-page.ts";
import type { Glossary, Sources } from "./glossary.ts";
import { type Difference, withDifference } from "./translation-difference.ts";

export interface Library {
  readonly language: string;
  /** In the course's order, own ones last; one that is not translated is in English. */
  readonly lessons: readonly Lesson[];
  /** ids of those that are not the kit's */
  readonly own: ReadonlySet<string>;
  readonly glossary: Glossary;
  readonly sources: Sources;
  /** By file name. */
  readonly pages: Readonly<Record<string, Page>>;
  /** Lessons that could not be read are left out; this says why. */
  readonly faults: readonly Fault[];
}

/** `scripts/lesson-data.ts` has read them. */
type Load<T> = () => Promise<Reading<T>>;
type Files<T> = Readonly<Record<string, Load<T>>>;
const LESSONS: Files<Lesson> = import.meta.glob<Reading<Lesson>>("../../../lessons/en/*.md", {
  query: "?data",
  import: "default",
});
const TRANSLATIONS: Files<Difference> = import.meta.glob<Reading<Difference>>(
  ["../../../lessons/*/*.md", "!../../../lessons/en/*.md"],
  { query: "?data", import: "default" },
);
const GLOSSARIES: Files<Glossary> = import.meta.glob<Reading<Glossary>>("../../../lessons/*/glossary.yaml", {
  query: "?data",
  import: "default",
});
const PAGES: Files<Page> = import.meta.glob<Reading<Page>>("../../../lessons/*/pages/*.md", {
  query: "?data",
  import: "default",
});
const SOURCES: Files<Sources> = import.meta.glob<Reading<Sources>>("../../../lessons/sources.yaml", {
  query: "?data",
  import: "default",
});
const TEXTS = import.meta.glob<string>("../../../lessons/en/*.md", { query: "?raw", import: "default" });

const SOURCE_LANGUAGE = "en";
const inLanguage = <T>(files: Files<T>, language: string) =>
  Object.entries(files).filter(([address]) => address.includes(`/lessons/${language}/`));
const nameOf = (address: string): string => present(address.split("/").pop()).replace(/\.\w+$/, "");

/** The file of one of the kit's lessons in English, unchanged; null when there is no such lesson. */
export const lessonText = async (id: string): Promise<string | null> =>
  (await TEXTS[`../../../lessons/${SOURCE_LANGUAGE}/${id}.md`]?.()) ?? null;

const NEW_LESSONS = import.meta.glob<string>("../../../lessons/new-lesson.*.md", {
  query: "?raw",
  import: "default",
});

/** What a new lesson begins with: two steps that run. English where there is none in the language. */
export const newLessonText = async (language: string): Promise<string> =>
  (await NEW_LESSONS[`../../../lessons/new-lesson.${language}.md`]?.()) ??
  (await import("../../../lessons/new-lesson.md?raw")).default;

const shelves = new Map<string, Promise<Library>>();

/** Languages without lessons get the English ones. A library is read once; one that did not come can be asked for again. */
export function loadLibrary(language: string): Promise<Library> {
  const known = shelves.get(language);
  if (known) return known;
  const library = readLibrary(language);
  shelves.set(language, library);
  library.catch(() => shelves.delete(language));
  return library;
}

const listeners = new Set<() => void>();

/** Own lessons have changed: whoever asks from now on, or follows, gets them read anew. */
export function forgetLibraries(): void {
  shelves.clear();
  for (const tell of listeners) tell();
}

/** @returns ends it */
export function onLibrariesForgotten(call: () => void): () => void {
  listeners.add(call);
  return () => listeners.delete(call);
}

async function readLibrary(language: string): Promise<Library> {
  const faults: Fault[] = [];
  const keep = <T>({ value, faults: found }: Reading<T>): T | null => {
    faults.push(...found);
    return value;
  };
  /** By the files' names; those that could not be read are left out. */
  const all = async <T>(files: readonly (readonly [string, Load<T>])[]): Promise<Map<string, T>> => {
    const read = await Promise.all(
      files.map(async ([address, load]) => [nameOf(address), await load()] as const),
    );
    return new Map(
      read.flatMap(([name, reading]) => {
        const value = keep(reading);
        return value === null ? [] : [[name, value] as [string, T]];
      }),
    );
  };
  const inBoth = <T>(files: Files<T>) =>
    Promise.all([...new Set([SOURCE_LANGUAGE, language])].map((each) => all(inLanguage(files, each))));
  const [sources, translated, glossaries, pages, publications, own] = await Promise.all([
    all(Object.entries(LESSONS)),
    all(inLanguage(TRANSLATIONS, language)),
    inBoth(GLOSSARIES),
    inBoth(PAGES),
    all(Object.entries(SOURCES)),
    ownLessons(Object.keys(LESSONS).map(nameOf)),
  ]);
  const lessons = [...sources].map(([id, source]) => withDifference(source, translated.get(id)));
  const inOrder = (list: readonly Lesson[]) => [...list].sort((a, b) => a.number - b.number);
  const shared = {
    glossary: withoutPrototype(...glossaries.flatMap((each) => [...each.values()])),
    sources: withoutPrototype(...publications.values()),
  };
  return {
    ...withOwnWords(shared, own.lessons),
    language,
    lessons: [...inOrder(lessons), ...inOrder(own.lessons)],
    own: new Set(own.lessons.map(({ id }) => id)),
    pages: withoutPrototype(...pages.map((each) => Object.fromEntries(each))),
    faults: [...faults, ...own.faults],
  };
}

/** A key such as "constructor" finds nothing in it. */
const withoutPrototype = <T>(...records: readonly Readonly<Record<string, T>>[]): Record<string, T> =>
  Object.assign(Object.create(null), ...records);

/** The reader of lesson texts comes only where there is one to read. */
async function ownLessons(taken: readonly string[]): Promise<OwnReading> {
  const { files, faults } = await ownFiles();
  if (files.length === 0) return { lessons: [], faults };
  const { readOwn } = await import("../own/read-own.ts");
  const own = readOwn(files, new Set(taken));
  return { ...own, faults: [...faults, ...own.faults] };
}
