import { expect, test } from "vitest";
import type { LessonProgress, Progress } from "../../../src/lesson/progress/progress.ts";
import { namedInProgress, renamedInProgress } from "../../../src/lesson/progress/progress-rename.ts";

const lesson = (change: Partial<LessonProgress>): LessonProgress => ({
  step: "a",
  seen: [],
  finished: false,
  answers: {},
  recalled: {},
  ...change,
});
const attempt = (right: boolean, day: string) => ({ given: "x", right, tries: 1, day });

test("what stands under the new id already is merged: of neither anything is lost", () => {
  const before: Progress = {
    version: 1,
    quiz: { round: 1, given: { "new#a": true, "old#a": false, "new#b": true }, results: [] },
    lessons: {
      old: lesson({
        seen: ["a"],
        answers: { a: attempt(true, "2026-11-01") },
        written: { a: "One." },
      }),
      new: lesson({
        seen: ["b"],
        finished: true,
        answers: { a: attempt(false, "2026-11-02"), b: attempt(true, "2026-11-01") },
        written: { a: "Two." },
      }),
      third: lesson({
        recalled: {
          "old#a": { right: true, day: "2026-11-01" },
          "new#a": { right: false, day: "2026-11-03" },
        },
      }),
    },
  };
  const after = renamedInProgress(before, "old", "new");
  expect(after.lessons).toEqual({
    new: lesson({
      seen: ["a", "b"],
      finished: true,
      answers: { a: attempt(false, "2026-11-02"), b: attempt(true, "2026-11-01") },
      written: { a: "One.\n\nTwo." },
    }),
    third: lesson({ recalled: { "new#a": { right: false, day: "2026-11-03" } } }),
  });
  expect(after.quiz!.given).toEqual({ "new#a": false, "new#b": true });
  expect(namedInProgress(before, "old")).toBe(true);
  expect(namedInProgress(after, "old")).toBe(false);
});
