/**
 * `npm run lessons:check [-- file ...]`: every lesson read, run through the model and measured. Exit 1 on any fault.
 * `--words`: without the model, at once. `--schema`: JSON Schemas for editors.
 */
import { existsSync, readFileSync } from "node:fs";
import { basename, dirname, resolve } from "node:path";
import { checkCourse, checkLesson, medianGrade, type Report } from "../lesson/check/check.ts";
import type { Library } from "../lesson/check/check-library.ts";
import { rememberAnswers, type Solve } from "../lesson/check/check-model.ts";
import {
  glossaryTermFaults,
  lessonTermFaults,
  pageTermFaults,
  type Terms,
} from "../lesson/check/check-terms.ts";
import { checkPage } from "../lesson/check/check-text.ts";
import { lessonSchemas } from "../lesson/format/json-schema.ts";
import type { Lesson } from "../lesson/lesson.ts";
import { readLesson, refuseIn } from "../lesson/read/read.ts";
import { describeFault, type Fault } from "../sim/faults.ts";
import { type LessonFiles, readLessonFiles, SOURCE_LANGUAGE } from "./lesson-files.ts";

const FOLDER = "lessons";

/** `answer` null: words only. */
function run(wanted: readonly string[], answer: Solve | null): readonly Fault[] {
  const lessonFiles = readLessonFiles(FOLDER);
  const named = new Set(wanted.map((file) => resolve(file)));
  const faults: Fault[] = lessonFiles.faults.filter(
    ({ path }) => wanted.length === 0 || named.has(resolve(path.replace(/:\d+$/, ""))),
  );
  for (const [language, lessons] of Object.entries(lessonFiles.lessons)) {
    const terms = lessonFiles.terms[language] ?? {};
    if (wanted.length === 0)
      faults.push(
        ...glossaryTermFaults(
          lessonFiles.glossaries[language] ?? {},
          terms,
          `${FOLDER}/${language}/glossary.yaml`,
        ),
      );
    for (const lesson of lessons) {
      if (wanted.length > 0 && !named.delete(resolve(lesson.file))) continue;
      const report = checkLesson(
        lesson,
        libraryOf(lessonFiles, language),
        language === SOURCE_LANGUAGE ? answer : null,
      );
      faults.push(...report.faults, ...checkCourse(lesson, report), ...lessonTermFaults(lesson, terms));
      process.stdout.write(
        `${lesson.file}: ${lesson.steps.length} steps; ${measuresOf(report, language)}; version ${lesson.version}\n`,
      );
    }
  }
  for (const pages of wanted.length === 0 ? Object.entries(lessonFiles.pages) : [])
    faults.push(...checkPages(...pages, lessonFiles.terms[pages[0]] ?? {}));
  if (wanted.length === 0)
    for (const file of lessonFiles.untranslated)
      process.stdout.write(`${file}: not there yet; readers get the English with a note\n`);
  // The remaining ones are elsewhere, or could not be read with the others.
  for (const file of named) faults.push(...checkApart(file, lessonFiles, answer));
  return faults;
}

const checkPages = (language: string, pages: LessonFiles["pages"][string], terms: Terms): readonly Fault[] =>
  Object.entries(pages).flatMap(([name, page]) => {
    const file = `${FOLDER}/${language}/pages/${name}.md`;
    const { refuse, faults } = refuseIn(file);
    checkPage(page, refuse);
    return [...faults, ...pageTermFaults(page, terms, file)];
  });

/** The measures of a text that apply to its language. */
function measuresOf({ grade, grades, places }: Report, language: string): string {
  const { fleschKincaid, smog, lix, inflesz, wordsPerSentence, longestSentence } = grade;
  const hardest = Math.max(...grades.map((each) => each.fleschKincaid));
  return [
    ...(language === SOURCE_LANGUAGE
      ? [
          `Flesch-Kincaid ${medianGrade(grades).toFixed(1)} median, ${hardest.toFixed(1)} hardest step, ${fleschKincaid.toFixed(1)} whole`,
          `SMOG ${smog.toFixed(1)}`,
        ]
      : []),
    `LIX ${lix.toFixed(0)}`,
    ...(language === "es" ? [`INFLESZ ${inflesz.toFixed(0)}`] : []),
    `${wordsPerSentence.toFixed(1)} words a sentence, ${longestSentence} at most`,
    ...(places.length > 0
      ? [`right answers by place ${places.map((share) => `${Math.round(100 * share)} %`).join(", ")}`]
      : []),
  ].join("; ");
}

function checkApart(file: string, lessonFiles: LessonFiles, answer: Solve | null): readonly Fault[] {
  const within = lessonFiles.faults.filter(({ path }) => resolve(path.replace(/:\d+$/, "")) === file);
  if (!existsSync(file)) return [{ path: `${file}:1`, found: "no such file", allowed: "a lesson's file" }];
  // Those of the library have been reported already.
  if (within.length > 0 || basename(dirname(dirname(file))) === FOLDER) return [];
  const { value, faults } = readLesson(readFileSync(file, "utf8"), file);
  return value ? checkLesson(value, libraryOf(lessonFiles, SOURCE_LANGUAGE, value), answer).faults : faults;
}

const libraryOf = (lessonFiles: LessonFiles, language: string, ...also: Lesson[]): Library => ({
  glossary: lessonFiles.glossaries[language] ?? {},
  sources: lessonFiles.sources,
  lessons: [...(lessonFiles.lessons[language] ?? []), ...also],
});

const given = process.argv.slice(2);
if (given.includes("--schema")) process.stdout.write(`${JSON.stringify(lessonSchemas(), null, 2)}\n`);
else {
  const answer = given.includes("--words")
    ? null
    : rememberAnswers((await import("../sim/circulation/solve.ts")).solve);
  const faults = run(
    given.filter((each) => !each.startsWith("--")),
    answer,
  );
  for (const fault of faults) process.stdout.write(`${describeFault(fault)}\n`);
  process.stdout.write(faults.length === 0 ? "No faults.\n" : `${faults.length} faults.\n`);
  process.exitCode = faults.length === 0 ? 0 : 1;
}
