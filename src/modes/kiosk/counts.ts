/** How often each lesson was opened, by day; no persons, and only when the organiser wants it. */

import * as v from "valibot";
import { t } from "../../i18n/index.ts";
import { keptIn } from "../../ui/kept-in.ts";
import { writeCsv } from "../../ui/take-away/csv.ts";

/** `2026-11-25` -> lesson's id and language -> times */
export type Counts = Readonly<Record<string, Readonly<Record<string, number>>>>;
const countsSchema = v.record(v.string(), v.record(v.string(), v.number()));
const KEPT = keptIn<Counts>(
  () => localStorage,
  "lungward.counts",
  (found) => v.parse(countsSchema, found),
);

export const readCounts = (): Counts => KEPT.read() ?? {};

export const counted = (counts: Counts, day: string, lesson: string): Counts => ({
  ...counts,
  [day]: { ...counts[day], [lesson]: (counts[day]?.[lesson] ?? 0) + 1 },
});

export const count = (day: string, lesson: string): void => KEPT.write(counted(readCounts(), day, lesson));

export const eraseCounts = (): void => KEPT.write(null);

/** `title` of what was counted */
export const countsTable = (counts: Counts, title: (lesson: string) => string): string =>
  writeCsv([
    ["day", "lesson", "times"].map((column) => t(`organiser.${column}`)),
    ...Object.entries(counts).flatMap(([day, lessons]) =>
      Object.entries(lessons).map(([lesson, times]) => [day, title(lesson), times] as const),
    ),
  ]);
