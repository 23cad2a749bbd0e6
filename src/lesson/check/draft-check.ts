/** A text that is being written, checked as `lessons:check` checks a file: read at once, then the model step by step. */
import type { Fault } from "../../sim/faults.ts";
import { LIMITS } from "../format/limits.ts";
import type { Lesson } from "../lesson.ts";
import { type Reading, readLesson, refuseIn } from "../read/read.ts";
import { readTranslation } from "../read/read-translation.ts";
import { checkWords } from "./check.ts";
import { checkLibrary, type Library } from "./check-library.ts";
import { checkStep, type Solve } from "./check-model.ts";
import { checkPlaces } from "./check-places.ts";

/** File name under which faults are reported: the text has only lines. */
export const DRAFT_FILE = "lesson.md";

/** A text that names the id of a kit lesson and a language is a translation of that lesson. */
export function readDraft(text: string, library: Library): Reading<Lesson> {
  const front = text.slice(0, LIMITS.part).split(/\n---\s*\n/, 1)[0] ?? "";
  const id = /^id:\s*(\S+)/m.exec(front)?.[1];
  const source = /^language:/m.test(front) ? library.lessons.find((lesson) => lesson.id === id) : undefined;
  const read = source ? readTranslation(text, DRAFT_FILE, source) : readLesson(text, DRAFT_FILE);
  if (!read.value) return read;
  const { refuse, faults } = refuseIn(DRAFT_FILE);
  const settings = front.split("\n");
  const lineOf = (key: string) => settings.findIndex((line) => line.startsWith(`${key}:`)) + 1 || 1;
  checkLibrary(read.value, withLesson(library, read.value), refuse, lineOf);
  return { value: read.value, faults: [...read.faults, ...faults] };
}

/** How far a check has come. */
export interface CheckedSoFar {
  /** steps run through the model, of all */
  readonly steps: number;
  readonly of: number;
  /** All found until now beyond those of `readDraft`. */
  readonly faults: readonly Fault[];
}

/**
 * What a lesson that could be read says wrongly or too hard: words first, then each step by the model.
 * A translation has its source's states, so only its words are checked.
 */
export function* checkDraft(lesson: Lesson, solve: Solve): Generator<CheckedSoFar> {
  const { refuse, faults } = refuseIn(DRAFT_FILE);
  checkWords(lesson, refuse);
  const of = lesson.translation ? 0 : lesson.steps.length;
  yield { steps: 0, of, faults: [...faults] };
  for (let index = 0; index < of; index++) {
    checkStep(lesson, index, solve, refuse);
    // The places need every question's right answer.
    if (index === of - 1) checkPlaces(lesson, solve, refuse);
    yield { steps: index + 1, of, faults: [...faults] };
  }
}

const withLesson = (library: Library, lesson: Lesson): Library => ({
  ...library,
  lessons: [...library.lessons.filter(({ id }) => id !== lesson.id), lesson],
});
