import { expect, test } from "vitest";
import {
  dueForRecall,
  type LessonProgress,
  NO_PROGRESS,
  type Progress,
} from "../../../src/lesson/progress/progress.ts";
import { mergeProgress, takeProgress } from "../../../src/lesson/progress/progress-merge.ts";

const lesson = (more: Partial<LessonProgress>): LessonProgress => ({
  step: "a",
  seen: ["a"],
  finished: false,
  answers: {},
  recalled: {},
  ...more,
});
const attempt = (day: string, tries: number, right = true) => ({ given: "x", right, tries, day });
const record = (lessons: Progress["lessons"]): Progress => ({ version: 1, lessons });

test("lessons, steps and answers of both stay", () => {
  const ours = record({ one: lesson({ answers: { a: attempt("2026-01-01", 1) } }), two: lesson({}) });
  const theirs = record({
    one: lesson({ seen: ["b"], finished: true, answers: { b: attempt("2026-01-01", 1) } }),
    three: lesson({}),
  });
  const { lessons } = mergeProgress(ours, theirs);
  expect(Object.keys(lessons).sort()).toEqual(["one", "three", "two"]);
  expect(lessons.one?.seen).toEqual(["a", "b"]);
  expect(lessons.one?.finished).toBe(true);
  expect(Object.keys(lessons.one?.answers ?? {}).sort()).toEqual(["a", "b"]);
});

test("of one step the newest answer stays, whichever side has it, with the note of either", () => {
  const old = record({ one: lesson({ answers: { a: { ...attempt("2026-01-01", 3), note: "odd" } } }) });
  const fresh = record({ one: lesson({ answers: { a: attempt("2026-01-02", 1, false) } }) });
  const newest = { ...attempt("2026-01-02", 1, false), note: "odd" };
  expect(mergeProgress(old, fresh).lessons.one?.answers.a).toEqual(newest);
  expect(mergeProgress(fresh, old).lessons.one?.answers.a).toEqual(newest);
  const again = record({ one: lesson({ answers: { a: attempt("2026-01-02", 2) } }) });
  expect(mergeProgress(fresh, again).lessons.one?.answers.a?.tries).toBe(2);
});

test("a finished round of the quiz is not undone by an older one", () => {
  const results = [{ day: "2026-01-01", right: 1, asked: 2 }];
  const older = { ...NO_PROGRESS, quiz: { round: 1, given: { "one#a": true }, results: [] } };
  const newer = { ...NO_PROGRESS, quiz: { round: 2, given: {}, results } };
  expect(mergeProgress(older, newer).quiz).toEqual(newer.quiz);
});

test("the finished rounds of both sides stay, once each, and the higher round goes on", () => {
  const [first, twice, last] = [
    { day: "2026-01-01", right: 1, asked: 2 },
    { day: "2026-01-02", right: 2, asked: 2 },
    { day: "2026-01-03", right: 0, asked: 2 },
  ] as const;
  const ours = { ...NO_PROGRESS, quiz: { round: 3, given: { "one#a": true }, results: [first, last] } };
  const theirs = { ...NO_PROGRESS, quiz: { round: 4, given: {}, results: [first, twice, twice] } };
  const merged = { round: 4, given: {}, results: [first, twice, twice, last] };
  expect(mergeProgress(ours, theirs).quiz).toEqual(merged);
  expect(mergeProgress(theirs, ours).quiz).toEqual(merged);
  expect(mergeProgress(mergeProgress(ours, theirs), theirs).quiz).toEqual(merged);
  const same = { ...theirs, quiz: { ...theirs.quiz, round: 3 } };
  expect(mergeProgress(ours, same).quiz).toEqual({ ...merged, round: 3, given: { "one#a": true } });
});

test("of two devices' texts to one task both stay, once, however often the file is taken; between tabs the one being written stays", () => {
  const ours = record({ one: lesson({ written: { a: "From here.", b: "Same" } }) });
  const theirs = record({ one: lesson({ written: { a: "From there.", b: "Same, and more", c: "New" } }) });
  const both = { a: "From here.\n\nFrom there.", b: "Same, and more", c: "New" };
  const taken = takeProgress(ours, theirs);
  expect(taken.lessons.one?.written).toEqual(both);
  expect(takeProgress(taken, theirs).lessons.one?.written).toEqual(both);
  expect(mergeProgress(ours, theirs).lessons.one?.written?.a).toBe("From here.");
  const long = record({ one: lesson({ written: { a: "x".repeat(1000) } }) });
  expect(takeProgress(long, theirs).lessons.one?.written?.a).toHaveLength(1000);
});

test("a record with as many lessons and rounds as a file can hold is merged and looked through at once", () => {
  const results = Array.from({ length: 12_000 }, (_, day) => ({ day: String(day), right: 1, asked: 2 }));
  const lessons = Object.fromEntries(
    Array.from({ length: 6_000 }, (_, id) => [
      String(id),
      lesson({
        answers: { a: attempt("2026-01-01", 1, false) },
        recalled: { [`${id}#b`]: { right: true, day: "1" } },
      }),
    ]),
  );
  const large: Progress = { ...record(lessons), quiz: { round: 1, given: {}, results } };
  const began = performance.now();
  const merged = mergeProgress(large, large);
  const due = dueForRecall(large, "2026-01-02");
  const alone = performance.now();
  expect([Object.keys(merged.lessons).length, merged.quiz?.results.length, due.length]).toEqual([
    6_000, 12_000, 3,
  ]);
  JSON.parse(JSON.stringify(large));
  // Against the same machine's own speed: in proportion to the record's size, not to its square.
  expect(alone - began).toBeLessThan(20 * (performance.now() - alone));
});
