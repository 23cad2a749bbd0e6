/** The kit's lessons, pages, glossaries and publications as data: read when the kit is built, by the readers that the page keeps for a lesson of one's own, so that no page reads their text again. */
import { readFileSync } from "node:fs";
import { basename, relative } from "node:path";
import { normalizePath, type Plugin } from "vite";
import { readOne, SOURCE_LANGUAGE } from "../src/cli/lesson-files.ts";
import type { Lesson } from "../src/lesson/lesson.ts";
import { readGlossary, readSources } from "../src/lesson/library/glossary.ts";
import { type Difference, differenceOf } from "../src/lesson/library/translation-difference.ts";
import type { Reading } from "../src/lesson/read/read.ts";
import { type Page, readPage } from "../src/lesson/read/read-page.ts";
import { describeFault } from "../src/sim/faults.ts";

/** Behind a file's name in an import. */
const ASKED = /\?data$/;

/** @param file such as `lessons/de/02-steps.md` */
export function lessonData(file: string): Reading<unknown> {
  const text = readFileSync(file, "utf8");
  const language = languageOf(file);
  const source = sourceOf(file);
  if (file.includes("/pages/"))
    return readPage(text, file, language, source === null ? null : (lessonData(source).value as Page | null));
  if (file.endsWith(".md")) return source ? translationData(file, language, source) : readSource(file, text);
  return basename(file) === "sources.yaml" ? readSources(text, file) : readGlossary(text, file);
}

const FOLDER = /\blessons\/([^/]+)\//;
const languageOf = (file: string): string => FOLDER.exec(file)?.[1] ?? "";

/** The file of which this one is a translation. */
const sourceOf = (file: string): string | null =>
  file.endsWith(".md") && languageOf(file) !== SOURCE_LANGUAGE
    ? file.replace(FOLDER, `lessons/${SOURCE_LANGUAGE}/`)
    : null;

const known = new Map<string, { readonly text: string; readonly reading: Reading<Lesson> }>();

/** Each translation asks for its source again. */
function readSource(file: string, text: string): Reading<Lesson> {
  const kept = known.get(file);
  if (kept?.text === text) return kept.reading;
  const reading = readOne(file, SOURCE_LANGUAGE);
  known.set(file, { text, reading });
  return reading;
}

function translationData(file: string, language: string, source: string): Reading<Difference> {
  const original = lessonData(source).value as Lesson | null;
  const { value, faults } = readOne(file, language, original ? [original] : []);
  // As JSON carries it: keys without a value are no difference.
  const plain: unknown = JSON.parse(JSON.stringify(value));
  return { value: value && (differenceOf(JSON.parse(JSON.stringify(original)), plain) ?? {}), faults };
}

/** A file that cannot be read stops a build; the development server leaves it out, and the page says so. */
export function lessons(): Plugin {
  let building = false;
  return {
    name: "lessons",
    configResolved({ command }) {
      building = command === "build";
    },
    load: {
      filter: { id: ASKED },
      handler(id) {
        const file = normalizePath(relative("", id.replace(ASKED, "")));
        const source = sourceOf(file);
        if (source) this.addWatchFile(source);
        const { value, faults } = lessonData(file);
        if (building && faults.length > 0) this.error(faults.map(describeFault).join("\n"));
        const json = JSON.stringify({ value, faults });
        return { code: `export default JSON.parse(${JSON.stringify(json)})`, map: { mappings: "" } };
      },
    },
  };
}
