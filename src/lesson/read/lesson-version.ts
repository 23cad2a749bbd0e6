/** A short fingerprint of a lesson's text: a translation names the one it was made from. Scenes do not count. */
import type { Lesson, Part, Question } from "../lesson.ts";

/** Eight hexadecimal digits; 32-bit FNV-1a (Fowler, Noll, Vo), enough to notice a change. */
export function fingerprint(text: string): string {
  let hash = 0x811c9dc5;
  for (let index = 0; index < text.length; index++) {
    hash ^= text.charCodeAt(index);
    hash = Math.imul(hash, 0x01000193);
  }
  return (hash >>> 0).toString(16).padStart(8, "0");
}

/** Line numbers and expressions' trees left aside: only what a translator would read. */
export function versionOf(lesson: Omit<Lesson, "version">): string {
  const words = [
    lesson.title,
    lesson.reader,
    lesson.aim,
    lesson.remember,
    lesson.tell,
    lesson.steps.map((step) => [
      step.id,
      step.title,
      [step.plain, step.technical, step.notes, step.caution].map((part) => part && proseOf(part)),
      step.question && questionWords(step.question),
      ...(step.task ? [strip([step.task.ask, step.task.answer])] : []),
    ]),
    ...(lesson.goals ? [lesson.goals] : []),
  ];
  // The letter keeps YAML from reading digits, or 38541e41, as a number.
  return `v${fingerprint(JSON.stringify(words))}`;
}

const NOT_WORDS = ["line", "of", "claims", "src"];
const proseOf = (part: Part): unknown => strip(part.prose);

function questionWords(question: Question): unknown {
  const { answers, items, mistakes, solution, ...rest } = question as unknown as Record<string, unknown>;
  const named = (list: unknown) =>
    (list as Record<string, unknown>[] | undefined)?.map(({ id, say, because }) => strip([id, say, because]));
  const { ask, hints, reached, further, missed, close, low, high, right, wrong } = rest;
  return [
    named(answers),
    named(items),
    strip([ask, hints, reached, further, missed, close, low, high, right, wrong]),
    ...(mistakes ? [named(mistakes), strip(solution)] : []),
  ];
}

function strip(value: unknown): unknown {
  if (Array.isArray(value)) return value.map(strip);
  if (typeof value !== "object" || value === null) return value;
  return Object.fromEntries(
    Object.entries(value)
      .filter(([key]) => !NOT_WORDS.includes(key))
      .map(([key, each]) => [key, strip(each)]),
  );
}
