/** The kit's own lessons, as the page loads them: one language at a time, English where there is no translation. */

import { present } from "../sim/checked/present.ts";
import type { Fault } from "../sim/faults.ts";
import { type Glossary, readGlossary, readSources, type Sources } from "./glossary.ts";
import type { Lesson } from "./lesson.ts";
import { withOwnWords } from "./own-keys.ts";
import { ownFiles } from "./own-source.ts";
import { readLesson } from "./read.ts";
import { readOwn } from "./read-own.ts";
import { type Page, readPage } from "./read-page.ts";
import { readTranslation } from "./read-translation.ts";

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

type Load = () => Promise<string>;
const LESSONS = import.meta.glob<string>("../../lessons/*/*.md", { query: "?raw", import: "default" });
const GLOSSARIES = import.meta.glob<string>("../../lessons/*/glossary.yaml", {
  query: "?raw",
  import: "default",
});
const PAGES = import.meta.glob<string>("../../lessons/*/pages/*.md", { query: "?raw", import: "default" });
const SOURCES = import.meta.glob<string>("../../lessons/sources.yaml", { query: "?raw", import: "default" });

const SOURCE_LANGUAGE = "en";
const pathOf = (address: string): string => address.replace("../../", "");
const inLanguage = (files: Readonly<Record<string, Load>>, language: string) =>
  Object.entries(files).filter(([address]) => pathOf(address).split("/")[1] === language);

/** The file of one of the kit's lessons, unchanged; null when there is no such lesson. */
export const lessonText = async (id: string, language = SOURCE_LANGUAGE): Promise<string | null> =>
  (await LESSONS[`../../lessons/${language}/${id}.md`]?.()) ?? null;

const NEW_LESSONS = import.meta.glob<string>("../../lessons/new-lesson.*.md", {
  query: "?raw",
  import: "default",
});

/** What a new lesson begins with: two steps that run. English where there is none in the language. */
export const newLessonText = async (language: string): Promise<string> =>
  (await NEW_LESSONS[`../../lessons/new-lesson.${language}.md`]?.()) ??
  (await import("../../lessons/new-lesson.md?raw")).default;

/** Lets the page draw before the next text is read: all lessons at once would stop the picture of a slow computer for half a second. */
const rest = () => new Promise<void>((done) => setTimeout(done));

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
  const keep = <T>({ value, faults: found }: { value: T | null; faults: readonly Fault[] }): T | null => {
    faults.push(...found);
    return value;
  };
  const texts = async (files: readonly [string, Load][]) =>
    Promise.all(files.map(async ([address, load]) => ({ file: pathOf(address), text: await load() })));

  const english = await texts(inLanguage(LESSONS, SOURCE_LANGUAGE));
  const sources: Lesson[] = [];
  for (const { file, text } of english) {
    await rest();
    const source = keep(readLesson(text, file));
    if (source) sources.push(source);
  }
  const translated = language === SOURCE_LANGUAGE ? [] : await texts(inLanguage(LESSONS, language));
  const lessons: Lesson[] = [];
  for (const source of sources) {
    const own = translated.find(({ file }) => file.endsWith(`/${source.id}.md`));
    if (own) await rest();
    lessons.push((own && keep(readTranslation(own.text, own.file, source))) ?? source);
  }
  const glossary: Glossary = Object.create(null);
  const pages: Record<string, Page> = Object.create(null);
  for (const each of new Set([SOURCE_LANGUAGE, language])) {
    for (const { file, text } of await texts(inLanguage(GLOSSARIES, each))) {
      Object.assign(glossary, keep(readGlossary(text, file)));
    }
    for (const { file, text } of await texts(inLanguage(PAGES, each))) {
      await rest();
      const name = present(file.split("/").pop()).replace(".md", "");
      const page = keep(readPage(text, file, each, pages[name] ?? null));
      if (page) pages[name] = page;
    }
  }
  const [publications] = await texts(Object.entries(SOURCES));
  const { files, faults: missed } = await ownFiles();
  const own = readOwn(files, new Set(sources.map(({ id }) => id)));
  faults.push(...missed, ...own.faults);
  const inOrder = (list: readonly Lesson[]) => [...list].sort((a, b) => a.number - b.number);
  const sourcesOfAll = publications && keep(readSources(publications.text, publications.file));
  const shared = { glossary, sources: sourcesOfAll ?? Object.create(null) };
  return {
    ...withOwnWords(shared, own.lessons),
    language,
    lessons: [...inOrder(lessons), ...inOrder(own.lessons)],
    own: new Set(own.lessons.map(({ id }) => id)),
    pages,
    faults,
  };
}
