/** Reads the lessons' folder, for the checker and for packages. */
import { existsSync, readdirSync, readFileSync } from "node:fs";
import { basename, join, relative } from "node:path";
import { readTerms, type Terms } from "../lesson/check/check-terms.ts";
import type { Lesson } from "../lesson/lesson.ts";
import { type Glossary, readGlossary, readSources, type Sources } from "../lesson/library/glossary.ts";
import { readLesson } from "../lesson/read/read.ts";
import { type Page, readPage } from "../lesson/read/read-page.ts";
import { readTranslation } from "../lesson/read/read-translation.ts";
import { present } from "../sim/checked/present.ts";
import type { Fault } from "../sim/faults.ts";

export interface LessonFiles {
  readonly sources: Sources;
  readonly glossaries: Readonly<Record<string, Glossary>>;
  /** language -> its termbase */
  readonly terms: Readonly<Record<string, Terms>>;
  /** language -> lessons that could be read, in file order */
  readonly lessons: Readonly<Record<string, readonly Lesson[]>>;
  /** language -> pages by name */
  readonly pages: Readonly<Record<string, Readonly<Record<string, Page>>>>;
  readonly faults: readonly Fault[];
  /** Lessons that a language lacks: files not there yet, whose readers get the English with a note. */
  readonly untranslated: readonly string[];
}

export const SOURCE_LANGUAGE = "en";

/** @param folder holds `en/`, other languages and `sources.yaml` */
export function readLessonFiles(folder: string): LessonFiles {
  const faults: Fault[] = [];
  const untranslated: string[] = [];
  const keep = <T>(
    { value, faults: found }: { value: T | null; faults: readonly Fault[] },
    otherwise: T,
  ): T => {
    faults.push(...found);
    return value ?? otherwise;
  };
  const sourcesFile = join(folder, "sources.yaml");
  const sources = keep(readSources(text(sourcesFile), sourcesFile), {});
  const glossaries: Record<string, Glossary> = {};
  const terms: Record<string, Terms> = {};
  const lessons: Record<string, Lesson[]> = {};
  const pages: Record<string, Record<string, Page>> = {};
  for (const language of languages(folder)) {
    const glossaryFile = join(folder, language, "glossary.yaml");
    glossaries[language] = keep(readGlossary(text(glossaryFile), glossaryFile), {});
    const termsFile = join(folder, language, "terms.yaml");
    if (!existsSync(termsFile))
      faults.push({ path: `${termsFile}:1`, found: "no terms", allowed: "a termbase for each language" });
    terms[language] = keep(readTerms(text(termsFile), termsFile), {});
    lessons[language] = files(join(folder, language)).flatMap((file) => {
      const lesson = keep(readOne(file, language, lessons[SOURCE_LANGUAGE] ?? []), null);
      return lesson ? [lesson] : [];
    });
    if (language === SOURCE_LANGUAGE) faults.push(...numbersTwice(lessons[language]));
    pages[language] = {};
    for (const file of files(join(folder, language, "pages"))) {
      const name = basename(file, ".md");
      const page = keep(readPage(text(file), file, language, pages[SOURCE_LANGUAGE]?.[name] ?? null), null);
      if (page) pages[language][name] = page;
      if (page?.translation?.outOfDate)
        faults.push(outOfDate(file, present(present(pages[SOURCE_LANGUAGE])[name]).version));
    }
    const missing = missingTranslations(folder, language);
    untranslated.push(...missing.lessons);
    faults.push(...missing.pages.map(noTranslation));
    faults.push(
      ...glossaryGaps(glossaryFile, present(glossaries[language]), present(glossaries[SOURCE_LANGUAGE])),
    );
  }
  return { sources, glossaries, terms, lessons, pages, faults, untranslated };
}

const text = (file: string): string => (existsSync(file) ? readFileSync(file, "utf8") : "");

function languages(folder: string): readonly string[] {
  const found = readdirSync(folder, { withFileTypes: true })
    .filter((entry) => entry.isDirectory())
    .map(({ name }) => name)
    .sort();
  return [SOURCE_LANGUAGE, ...found.filter((name) => name !== SOURCE_LANGUAGE)];
}

const files = (folder: string): readonly string[] =>
  existsSync(folder)
    ? readdirSync(folder)
        .filter((name) => name.endsWith(".md"))
        .sort()
        .map((name) => join(folder, name))
    : [];

/** @param sources lessons of which the file may be a translation */
export function readOne(
  file: string,
  language: string,
  sources: readonly Lesson[] = [],
): { value: Lesson | null; faults: Fault[] } {
  const id = basename(file, ".md");
  if (language === SOURCE_LANGUAGE) {
    const { value, faults } = readLesson(text(file), file);
    if (!value || value.id === id) return { value, faults: [...faults] };
    return {
      value,
      faults: [...faults, { path: `${file}:1`, found: `id ${value.id}`, allowed: `the file's name, ${id}` }],
    };
  }
  const source = sources.find((lesson) => lesson.id === id);
  if (!source) {
    return {
      value: null,
      faults: [
        { path: `${file}:1`, found: "no source that can be read", allowed: `${SOURCE_LANGUAGE}/${id}.md` },
      ],
    };
  }
  const { value, faults } = readTranslation(text(file), file, source);
  if (!value || value.language === language) return { value, faults: [...faults] };
  return {
    value,
    faults: [...faults, { path: `${file}:1`, found: `language ${value.language}`, allowed: language }],
  };
}

const outOfDate = (file: string, version: string): Fault => ({
  path: `${file}:1`,
  found: "words of an earlier source",
  allowed: `of: ${version}, once they say what the source says now`,
});

/** A number is a lesson's place in the course; a translation has its source's. */
function numbersTwice(lessons: readonly Lesson[]): Fault[] {
  return lessons.flatMap(({ file, number }, index) => {
    const first = lessons.slice(0, index).find((each) => each.number === number);
    if (!first) return [];
    const line =
      text(file)
        .split("\n")
        .findIndex((each) => each.startsWith("number:")) + 1;
    return [
      { path: `${file}:${line}`, found: `number: ${number}`, allowed: `a number that ${first.file} has not` },
    ];
  });
}

/** By file, so that a lesson or page that cannot be read is not also reported as missing. */
function missingTranslations(
  folder: string,
  language: string,
): { lessons: readonly string[]; pages: readonly string[] } {
  if (language === SOURCE_LANGUAGE) return { lessons: [], pages: [] };
  const source = join(folder, SOURCE_LANGUAGE);
  const lacking = (sources: readonly string[]) =>
    sources.map((file) => join(folder, language, relative(source, file))).filter((file) => !existsSync(file));
  return { lessons: lacking(files(source)), pages: lacking(files(join(source, "pages"))) };
}

const noTranslation = (file: string): Fault => ({
  path: `${file}:1`,
  found: "no translation",
  allowed: "one for each page",
});

function glossaryGaps(file: string, glossary: Glossary, source: Glossary): Fault[] {
  const missing = Object.keys(source).filter((key) => !(key in glossary));
  const stray = Object.keys(glossary).filter((key) => !(key in source));
  return [
    ...missing.map((key) => ({
      path: `${file}:1`,
      found: `no entry "${key}"`,
      allowed: "every key of the source",
    })),
    ...stray.map((key) => ({ path: `${file}:1`, found: `entry "${key}"`, allowed: "keys of the source" })),
  ];
}
