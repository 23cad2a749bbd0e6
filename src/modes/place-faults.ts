/** What an address asks for of the lessons and pages and is not there: each with what is. */
import type { Lesson } from "../lesson/lesson.ts";
import type { Library } from "../lesson/library/library.ts";
import { describeList, type Fault } from "../sim/faults.ts";
import { findStops, stopsOfList } from "./lecture/talk/stops.ts";
import type { Place } from "./shared/address/place.ts";

/** Pages that are made of the library itself. */
export const GLOSSARY = "glossary";
export const SOURCES = "sources";
export const QUIZ = "quiz";
export const PACKAGE = "package";

/** Only the modes that open lessons read these words. */
const OPENING_LESSONS: readonly string[] = ["study", "lecture", "author"];

export function placeFaults(place: Place, library: Library): readonly Fault[] {
  const { mode, lesson: id, step, more } = place;
  if (!OPENING_LESSONS.includes(mode)) return [];
  const faults: Fault[] = [];
  const refuse = (path: string, found: string, allowed: readonly string[]) =>
    faults.push({ path, found, allowed: describeList(allowed) });
  const lesson = library.lessons.find((each) => each.id === id);
  if (id && !lesson)
    refuse(
      "lesson",
      id,
      library.lessons.map((each) => each.id),
    );
  const pages = [GLOSSARY, SOURCES, QUIZ, PACKAGE, ...Object.keys(library.pages)];
  if (mode === "study" && more.page && !pages.includes(more.page)) refuse("page", more.page, pages);
  const { found, dropped } = findStops(stopsOfList(more.list ?? ""), library.lessons);
  const steps = more.list
    ? found.flatMap((stop) => (stop.kind === "step" ? [stop.step] : []))
    : stepsOf(lesson);
  // What is not read is no fault: without steps the missing lesson or list has been reported.
  if (step && steps.length > 0 && !isAmong(step, steps)) refuse("step", step, steps);
  return [...faults, ...(mode === "lecture" ? dropped : [])];
}

const stepsOf = (lesson: Lesson | undefined): readonly string[] => lesson?.steps.map(({ id }) => id) ?? [];

/** By id, or by number from 1. */
const isAmong = (step: string, steps: readonly string[]): boolean =>
  steps.includes(step) || (/^\d+$/.test(step) && Number(step) >= 1 && Number(step) <= steps.length);
