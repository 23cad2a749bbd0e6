/** A course as its package says it: which lessons in which order, from what share it is passed, when it is completed. */
import * as v from "valibot";
import type { Fault } from "../../sim/faults.ts";
import { LIMITS } from "../format/limits.ts";
import type { Lesson } from "../lesson.ts";
import { MAX_FIGURE_TEXT } from "../own/own-figures.ts";
import type { Progress, Score } from "../progress/progress.ts";
import type { Library } from "./library.ts";

/** Each lesson to its end; each of its questions answered; each of its steps opened. */
export const COMPLETED_WHEN = ["finished", "questions", "seen"] as const;
export type CompletedWhen = (typeof COMPLETED_WHEN)[number];

/** characters of what a fault quotes */
const LONGEST_FOUND = 100;
/** Of a package. */
const MAX_LESSONS = 100;

const text = (longest: number) => v.pipe(v.string(), v.maxLength(longest));

const courseSchema = v.strictObject({
  version: v.literal(1),
  /** ids, in order */
  lessons: v.pipe(v.array(text(100)), v.minLength(1), v.maxLength(MAX_LESSONS)),
  /** The version of the text that it begins with. */
  textVersion: v.picklist(["plain", "technical"]),
  /** 0 to 1; null = nothing is to be passed */
  passMark: v.nullable(v.pipe(v.number(), v.minValue(0), v.maxValue(1))),
  completedWhen: v.picklist(COMPLETED_WHEN),
  /** Lessons that are not the kit's. */
  own: v.pipe(
    v.array(v.strictObject({ file: text(200), text: text(LIMITS.file + MAX_FIGURE_TEXT) })),
    v.maxLength(MAX_LESSONS),
  ),
});
export type Course = v.InferOutput<typeof courseSchema>;

/** Where a page of a package has its course. */
export const COURSE_ELEMENT = "course";

/** @param found JSON */
export function readCourse(found: string): Course | Fault {
  const read = v.safeParse(v.pipe(v.string(), v.parseJson(), courseSchema), found);
  if (read.success) return read.output;
  const [issue] = read.issues;
  const key = v.getDotPath(issue);
  return {
    path: key === null ? COURSE_ELEMENT : `${COURSE_ELEMENT}.${key}`,
    found: issue.received.slice(0, LONGEST_FOUND),
    allowed: issue.expected ?? issue.message,
  };
}

/** The course's lessons alone, in its order and numbered by it; they ask again only for what is among them. */
export function libraryOfCourse(library: Library, { lessons }: Pick<Course, "lessons">): Library {
  const chosen = lessons.flatMap((id) => library.lessons.find((lesson) => lesson.id === id) ?? []);
  const inCourse = (lesson: string | null) => lesson === null || lessons.includes(lesson);
  return {
    ...library,
    lessons: chosen.map((lesson, index) => ({
      ...lesson,
      number: index + 1,
      recall: lesson.recall.filter((again) => inCourse(again.lesson)),
    })),
  };
}

/** 0 to 1. Lessons that ask nothing are done once their steps have been opened. */
export function doneOf(when: CompletedWhen, progress: Progress, lessons: readonly Lesson[]): number {
  const parts = lessons.map((lesson) => partsOf(when, progress, lesson));
  const all = parts.reduce((sum, [, of]) => sum + of, 0);
  if (all === 0) return when === "questions" ? doneOf("seen", progress, lessons) : 0;
  return parts.reduce((sum, [done]) => sum + done, 0) / all;
}

/** Of all questions that the lessons ask, those right at the first try; one not answered yet is not right. */
export function courseScore(progress: Progress, lessons: readonly Lesson[]): Score {
  const asked = lessons.flatMap((lesson) =>
    questionsOf(lesson).map(({ id }) => progress.lessons[lesson.id]?.answers[id]?.right === true),
  );
  return { right: asked.filter(Boolean).length, asked: asked.length };
}

const questionsOf = ({ steps }: Lesson) => steps.filter(({ question }) => question !== null);

function partsOf(
  when: CompletedWhen,
  progress: Progress,
  lesson: Lesson,
): readonly [done: number, of: number] {
  const done = progress.lessons[lesson.id];
  if (when === "finished") return [done?.finished ? 1 : 0, 1];
  const steps = when === "seen" ? lesson.steps : questionsOf(lesson);
  const isDone = ({ id }: { readonly id: string }) =>
    when === "seen" ? done?.seen.includes(id) : typeof done?.answers[id]?.right === "boolean";
  return [steps.filter(isDone).length, steps.length];
}
