/** Own lessons from where a page can have them: this device, and the folder `own` beside a served kit. */
import * as v from "valibot";
import { forgetLibraries } from "../../lesson/library.ts";
import { LIMITS } from "../../lesson/limits.ts";
import type { OwnFile } from "../../lesson/own-source.ts";
import { openOwnTexts } from "./own-texts.ts";
import { browserTextStore } from "./text-store.ts";

declare const __SINGLE_FILE__: boolean;

export async function ownLessonFiles(): Promise<readonly OwnFile[]> {
  const texts = await openOwnTexts({ store: browserTextStore() });
  const kept = texts.list.value
    .filter(({ listed }) => listed)
    .map(({ name, text }) => ({ file: `${name}.md`, text }));
  return [...kept, ...(__SINGLE_FILE__ ? [] : await servedLessons((url) => fetch(url)))];
}

/** bytes: some twenty times the longest lesson */
export const LARGEST_FILE = 500_000;

/** A file's text; null for one that can be no lesson: too large, unreadable, binary. */
export async function lessonFileText(file: File): Promise<string | null> {
  if (file.size > LARGEST_FILE) return null;
  const text = await file.text().catch(() => null);
  return text?.includes("\0") ? null : text;
}

/** Keeps a file beside the kit's lessons. @returns false for one that can be no lesson */
export async function addOwnFile(file: File): Promise<boolean> {
  const text = await lessonFileText(file);
  if (text === null) return false;
  const texts = await openOwnTexts({ store: browserTextStore() });
  texts.add(file.name.replace(/\.(md|txt|markdown)$/i, ""), text);
  forgetLibraries();
  return true;
}

const FOLDER = "own";
const indexSchema = v.object({
  lessons: v.pipe(v.array(v.pipe(v.string(), v.regex(/^[\w-][\w.-]*\.md$/))), v.maxLength(100)),
});

/** @param get fetches an address relative to the page; a folder without an index holds no lessons */
export async function servedLessons(get: (url: string) => Promise<Response>): Promise<readonly OwnFile[]> {
  const index = await textOf(get, `${FOLDER}/index.json`);
  const names = index === null ? null : v.safeParse(v.pipe(v.string(), v.parseJson(), indexSchema), index);
  if (!names?.success) return [];
  const files = await Promise.all(
    names.output.lessons.map(async (name) => ({
      file: `${FOLDER}/${name}`,
      text: await textOf(get, `${FOLDER}/${name}`),
    })),
  );
  return files.flatMap(({ file, text }) => (text === null ? [] : [{ file, text }]));
}

async function textOf(get: (url: string) => Promise<Response>, url: string): Promise<string | null> {
  try {
    const answer = await get(url);
    // A server that answers every address with its start page has no such file.
    if (!answer.ok || answer.headers.get("content-type")?.includes("html")) return null;
    const text = await answer.text();
    return text.length <= LIMITS.file ? text : null;
  } catch {
    return null;
  }
}
