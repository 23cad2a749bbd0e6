/** A playlist's stops found on the library: lessons and steps that are there, in the playlist's order. */
import { findStep, type Lesson, type Step } from "../../lesson/lesson.ts";
import { entryAt } from "../../sim/checked/present.ts";
import type { Fault } from "../../sim/faults.ts";
import type { Stop } from "./playlist.ts";

export interface FoundStop {
  readonly lesson: Lesson;
  readonly index: number;
  readonly step: Step;
}

export const stopsOf = (lesson: Lesson): readonly Stop[] =>
  lesson.steps.map((step) => ({ lesson: lesson.id, step: step.id }));

/** Stops that no longer exist are left out and reported. */
export function findStops(
  stops: readonly Stop[],
  lessons: readonly Lesson[],
): { readonly found: readonly FoundStop[]; readonly dropped: readonly Fault[] } {
  const dropped: Fault[] = [];
  const found = stops.flatMap(({ lesson: id, step }) => {
    const lesson = lessons.find((each) => each.id === id);
    const index = lesson ? findStep(lesson, step) : -1;
    if (lesson && index >= 0) return [{ lesson, index, step: entryAt(lesson.steps, index) }];
    const allowed = lesson ? lesson.steps.map((each) => each.id) : lessons.map((each) => each.id);
    dropped.push({ path: "list", found: lesson ? `${id}#${step}` : id, allowed: allowed.join(", ") });
    return [];
  });
  return { found, dropped };
}

/** Index of the stop that an address asks for, by number from 1 or by step id; the first when it names none. */
export function stopAsked(stops: readonly FoundStop[], asked: string): number {
  const number = Number(asked);
  const index = Number.isInteger(number) ? number - 1 : stops.findIndex(({ step }) => step.id === asked);
  return Math.min(Math.max(0, index), Math.max(0, stops.length - 1));
}

/** s: what the steps themselves ask for; a step without a time takes a minute. */
const USUAL_SECONDS = 60;
export const secondsOf = (stops: readonly FoundStop[]): number =>
  stops.reduce((sum, { step }) => sum + (step.seconds ?? USUAL_SECONDS), 0);
