/** How often each lesson was opened, by day; no persons, and only when the organiser wants it. */

import * as v from "valibot";
import { t } from "../../i18n/index.ts";
import { writeCsv } from "../../ui/take-away/csv.ts";

const KEY = "lungward.counts";

/** `2026-11-25` -> lesson's id and language -> times */
export type Counts = Readonly<Record<string, Readonly<Record<string, number>>>>;
const countsSchema = v.record(v.string(), v.record(v.string(), v.number()));

export function readCounts(): Counts {
  try {
    const found: unknown = JSON.parse(localStorage.getItem(KEY) ?? "{}");
    const counts = v.safeParse(countsSchema, found);
    return counts.success ? counts.output : {};
  } catch {
    return {};
  }
}

export const counted = (counts: Counts, day: string, lesson: string): Counts => ({
  ...counts,
  [day]: { ...counts[day], [lesson]: (counts[day]?.[lesson] ?? 0) + 1 },
});

export function count(day: string, lesson: string): void {
  try {
    localStorage.setItem(KEY, JSON.stringify(counted(readCounts(), day, lesson)));
  } catch {
    // A full or denied storage loses a count, not a visit.
  }
}

export function eraseCounts(): void {
  try {
    localStorage.removeItem(KEY);
  } catch {
    // Nothing was kept.
  }
}

/** `title` of what was counted */
export const countsTable = (counts: Counts, title: (lesson: string) => string): string =>
  writeCsv([
    ["day", "lesson", "times"].map((column) => t(`organiser.${column}`)),
    ...Object.entries(counts).flatMap(([day, lessons]) =>
      Object.entries(lessons).map(([lesson, times]) => [day, title(lesson), times] as const),
    ),
  ]);
