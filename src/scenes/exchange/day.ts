/** Which day of the course is shown, and its figures: one day passes in a second and a half, the last day stays a while. */

import { entryAt, lastOf } from "../../sim/checked/present.ts";
import type { ExchangeCourse } from "../../sim/exchange/index.ts";

const DAYS_PER_SECOND = 1 / 1.5;
/** s for which the last day stays before the course starts again */
const REST = 6;

/** More leaves than lymph carries, and what has collected stands high. */
const STILL_DAY = 2;

/** Day at `seconds` of the running clock; `still` shows the one on which everything can be seen. */
export function dayAt(course: ExchangeCourse, seconds: number, still: boolean): number {
  const last = lastOf(course.days);
  if (still) return Math.min(last, STILL_DAY);
  const turn = last / DAYS_PER_SECOND + REST;
  return Math.min(last, (seconds % turn) * DAYS_PER_SECOND);
}

export interface DayFigures {
  /** mL/h */
  readonly filtration: number;
  readonly lymph: number;
  readonly overflow: number;
  /** g/h of albumin that lymph carries back */
  readonly albumin: number;
  /** mL/h */
  readonly drained: number;
  /** mL in chest and abdomen */
  readonly collected: number;
  /** mmHg */
  readonly interstitialPressure: number;
  readonly ductPressure: number;
  /** ratio to lymph flow at rest that is carried at most */
  readonly lymphCarried: number;
}

const FIGURES = [
  "filtration",
  "lymph",
  "overflow",
  "albumin",
  "drained",
  "collected",
  "interstitialPressure",
  "ductPressure",
  "lymphCarried",
] as const;

/** The course's figures at `day`, linear between its points. */
export function figuresAt(course: ExchangeCourse, day: number): DayFigures {
  const { days } = course;
  const last = days.length - 1;
  const at = Math.min(last, Math.max(0, (day / (entryAt(days, last) || 1)) * last));
  const i = Math.min(last - 1, Math.floor(at));
  const w = at - i;
  const read = (key: (typeof FIGURES)[number]) =>
    entryAt(course[key], i) + (entryAt(course[key], i + 1) - entryAt(course[key], i)) * w;
  return Object.fromEntries(FIGURES.map((key) => [key, read(key)])) as unknown as DayFigures;
}

/** Drops that stand for a flow: one for each share `each` (mL/h), at most `most`. */
export const dropsFor = (flow: number, each: number, most: number): number =>
  Math.min(most, Math.max(0, Math.round(flow / each)));

/** Linear swelling of the tissue's spaces against rest, from the pressure in them: teaching shape, stiff below zero, giving way above. */
export const swelling = (interstitialPressure: number): number =>
  1 + 0.02 * (Math.min(interstitialPressure, 0) + 3) + 0.06 * Math.max(0, Math.min(interstitialPressure, 5));
