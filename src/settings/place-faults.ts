/** What an address asks for of the lessons and pages and is not there: each with what is. */
import type { Lesson } from "../lesson/lesson.ts";
import type { Shelf } from "../lesson/shelf.ts";
import { describeList, type Fault } from "../sim/faults.ts";
import { readStops } from "./lecture/playlist.ts";
import { findStops } from "./lecture/stops.ts";
import type { Place } from "./where.ts";

/** Pages that are made of the shelf itself. */
export const GLOSSARY = "glossary";
export const SOURCES = "sources";

/** Only the settings that open lessons read these words. */
const OPENING_LESSONS: readonly string[] = ["study", "lecture", "author"];

export function placeFaults(place: Place, shelf: Shelf): readonly Fault[] {
  const { setting, lesson: id, step, more } = place;
  if (!OPENING_LESSONS.includes(setting)) return [];
  const faults: Fault[] = [];
  const refuse = (path: string, found: string, allowed: readonly string[]) =>
    faults.push({ path, found, allowed: describeList(allowed) });
  const lesson = shelf.lessons.find((each) => each.id === id);
  if (id && !lesson)
    refuse(
      "lesson",
      id,
      shelf.lessons.map((each) => each.id),
    );
  const pages = [GLOSSARY, SOURCES, ...Object.keys(shelf.pages)];
  if (setting === "study" && more.page && !pages.includes(more.page)) refuse("page", more.page, pages);
  const { found, dropped } = findStops(readStops(more.list ?? ""), shelf.lessons);
  const steps = more.list ? found.map((stop) => stop.step.id) : stepsOf(lesson);
  // What is not read is no fault: without steps the missing lesson or list has been told.
  if (step && steps.length > 0 && !isAmong(step, steps)) refuse("step", step, steps);
  return [...faults, ...(setting === "lecture" ? dropped : [])];
}

const stepsOf = (lesson: Lesson | undefined): readonly string[] => lesson?.steps.map(({ id }) => id) ?? [];

/** By id, or by number from 1. */
const isAmong = (step: string, steps: readonly string[]): boolean =>
  steps.includes(step) || (/^\d+$/.test(step) && Number(step) >= 1 && Number(step) <= steps.length);
