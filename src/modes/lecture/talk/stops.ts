/** A talk's stops found on the library: lessons and steps that are there, the speaker's own slides as they are, in the talk's order. */
import { findStep, type Lesson, type Step } from "../../../lesson/lesson.ts";
import { entryAt } from "../../../sim/checked/present.ts";
import type { Fault } from "../../../sim/faults.ts";
import { lessonWith } from "./own-person.ts";
import { type OwnStop, type Stop, type StopOf, stepStop } from "./own-stops.ts";
import { readStops } from "./playlist.ts";

export interface FoundStep extends StopOf<"step"> {
  readonly found: { readonly lesson: Lesson; readonly index: number; readonly step: Step };
}

export type FoundStop = FoundStep | OwnStop;

/** A stop whose picture the kit draws. */
export type DrawnStop = FoundStep | StopOf<"bench">;
export const isDrawn = (stop: FoundStop): stop is DrawnStop => stop.kind === "step" || stop.kind === "bench";

export const stopsOf = (lesson: Lesson): readonly StopOf<"step">[] =>
  lesson.steps.map((step) => stepStop(lesson.id, step.id));

/** A step, and the step that resolves its prediction. */
export function stopsFor(lesson: Lesson, step: Step): readonly StopOf<"step">[] {
  const { question } = step;
  const resolving = question?.kind === "predict" ? [stepStop(lesson.id, question.reveal)] : [];
  return [stepStop(lesson.id, step.id), ...resolving];
}

/** The stops of a link's list. */
export const stopsOfList = (list: string): readonly StopOf<"step">[] =>
  readStops(list).map(({ lesson, step }) => stepStop(lesson, step));

/** Stops that no longer exist are left out and reported. */
export function findStops(
  stops: readonly Stop[],
  lessons: readonly Lesson[],
): { readonly found: readonly FoundStop[]; readonly dropped: readonly Fault[] } {
  const dropped: Fault[] = [];
  const found = stops.flatMap((stop): readonly FoundStop[] => {
    if (stop.kind !== "step") return [stop];
    const lesson = lessons.find((each) => each.id === stop.lesson);
    const index = lesson ? findStep(lesson, stop.step) : -1;
    if (lesson && index >= 0) {
      const own = lessonWith(lesson, index, stop.person);
      return [{ ...stop, found: { lesson: own, index, step: entryAt(own.steps, index) } }];
    }
    const allowed = lesson ? lesson.steps.map((each) => each.id) : lessons.map((each) => each.id);
    dropped.push({
      path: "list",
      found: lesson ? `${stop.lesson}#${stop.step}` : stop.lesson,
      allowed: allowed.join(", "),
    });
    return [];
  });
  return { found, dropped };
}

/** As the stop is called on stage; "" = it has no name. */
export const nameOfStop = (stop: FoundStop): string =>
  stop.kind === "step" ? stop.found.step.title : stop.title;

/** The lesson's step at a stop; null at the speaker's own. */
export const stepShown = (stop: FoundStop): Step | null => (stop.kind === "step" ? stop.found.step : null);

/** Whether nothing of the scene is seen. */
export const coversStage = ({ kind }: FoundStop): boolean => kind !== "step" && kind !== "bench";

/** The word `talk` of an address that opens what is kept on this device. */
export const KEPT_TALK = "kept";

/** Index of the stop that an address asks for, by number from 1 or by step id; the first when it names none. */
export function stopAsked(stops: readonly FoundStop[], asked: string): number {
  const number = Number(asked);
  const index = Number.isInteger(number)
    ? number - 1
    : stops.findIndex((stop) => stop.kind === "step" && stop.step === asked);
  return Math.min(Math.max(0, index), Math.max(0, stops.length - 1));
}

/** s: what a stop takes unless the speaker or the step says how long */
const USUAL_SECONDS = 60;
export function secondsFor(stop: FoundStop): number {
  if (stop.minutes !== null) return stop.minutes * 60;
  return (stop.kind === "step" ? stop.found.step.seconds : null) ?? USUAL_SECONDS;
}
export const secondsOf = (stops: readonly FoundStop[]): number =>
  stops.reduce((sum, stop) => sum + secondsFor(stop), 0);
