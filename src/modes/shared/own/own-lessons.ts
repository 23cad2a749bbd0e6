/** Own lessons from where a page can have them: this device, and the folder `own` beside a served kit. */
import * as v from "valibot";
import { LIMITS } from "../../../lesson/format/limits.ts";
import { forgetLibraries } from "../../../lesson/library/library.ts";
import { MAX_FIGURE_TEXT, splitFigures } from "../../../lesson/own/own-figures.ts";
import type { OwnFile, OwnLessons } from "../../../lesson/own/own-source.ts";
import type { Fault } from "../../../sim/faults.ts";
import { courseFault, courseHere } from "./course-here.ts";
import { fitsAsText, MAX_LENGTH, type OwnText, openOwnTexts } from "./own-texts.ts";
import { browserTextStore } from "./text-store.ts";

declare const __SINGLE_FILE__: boolean;

export async function ownLessonFiles(): Promise<OwnLessons> {
  // What others of a course system's pages keep on this device is not part of the course.
  const course = courseHere();
  if (course) return { files: course.own, faults: [] };
  const fault = courseFault();
  if (fault) return { files: [], faults: [fault] };
  const texts = await openOwnTexts({ store: browserTextStore() });
  const kept = asFiles(texts.list.value.filter(({ listed }) => listed));
  const served = __SINGLE_FILE__
    ? NONE
    : await servedLessons((url) => fetch(url, { signal: AbortSignal.timeout(LONGEST_WAIT) }));
  return { files: [...kept, ...served.files], faults: served.faults };
}

/** Each has a name of its own: a lesson is known by its file. */
export function asFiles(texts: readonly Pick<OwnText, "name" | "text">[]): OwnFile[] {
  const given = new Set<string>();
  return texts.map(({ name, text }) => {
    let file = `${name}.md`;
    for (let count = 2; given.has(file); count++) file = `${name} ${count}.md`;
    given.add(file);
    return { file, text };
  });
}

/** ms that the kit's lessons wait for a ward's */
const LONGEST_WAIT = 10_000;

const NONE: OwnLessons = { files: [], faults: [] };

/** What a text's file is called, and one without an ending. */
const TEXT_NAME = /(^[^.]+|\.(md|txt|markdown))$/i;

/** A file's text; null for one that can be no lesson: of another kind by its name, too large, unreadable, binary. */
export async function lessonFileText(file: File): Promise<string | null> {
  if (!TEXT_NAME.test(file.name) || file.size > MAX_LENGTH + MAX_FIGURE_TEXT) return null;
  const text = await file.text().catch(() => null);
  return text === null || text.includes("\0") || !fitsAsText(text) ? null : text;
}

/** What a text is called whose file has this name. */
export const nameOfFile = (name: string): string => name.replace(/\.(md|txt|markdown)$/i, "");

/** Keeps a file, once, beside the kit's lessons. @returns false for one that can be no lesson */
export async function addOwnFile(file: File): Promise<boolean> {
  const text = await lessonFileText(file);
  if (!text?.trim()) return false;
  const texts = await openOwnTexts({ store: browserTextStore() });
  const same = texts.list.value.find((each) => each.text === text);
  if (same) texts.show(same.id, true);
  else texts.add(nameOfFile(file.name), text);
  forgetLibraries();
  return true;
}

const FOLDER = "own";
const indexSchema = v.object({
  lessons: v.pipe(v.array(v.pipe(v.string(), v.regex(/^[\w-][\w.-]*\.md$/))), v.maxLength(100)),
});

/** @param get fetches an address relative to the page; a folder without an index holds no lessons */
export async function servedLessons(get: (url: string) => Promise<Response>): Promise<OwnLessons> {
  const index = await textOf(get, `${FOLDER}/index.json`);
  if (index === null) return NONE;
  const names = v.safeParse(v.pipe(v.string(), v.parseJson(), indexSchema), index);
  if (!names.success) return { files: [], faults: [faultIn("index.json", names.issues[0].message, INDEX)] };
  const files = await Promise.all(
    names.output.lessons.map(async (name) => ({
      file: `${FOLDER}/${name}`,
      text: await textOf(get, `${FOLDER}/${name}`),
    })),
  );
  return {
    files: files.filter((each): each is OwnFile => each.text !== null),
    faults: names.output.lessons
      .filter((_, index) => files[index]?.text === null)
      .map((name) => faultIn(name, "no text", `a text of at most ${LIMITS.file} characters`)),
  };
}

const INDEX = '{ "lessons": ["name.md"] }, at most 100 names';

const faultIn = (name: string, found: string, allowed: string): Fault => ({
  path: `${FOLDER}/${name}:1`,
  found,
  allowed,
});

async function textOf(get: (url: string) => Promise<Response>, url: string): Promise<string | null> {
  try {
    const answer = await get(url);
    // A server that answers every address with its start page has no such file.
    if (!answer.ok || answer.headers.get("content-type")?.includes("html")) return null;
    const text = await answer.text();
    return fitsAsText(text) && splitFigures(text).text.length <= LIMITS.file ? text : null;
  } catch {
    return null;
  }
}
