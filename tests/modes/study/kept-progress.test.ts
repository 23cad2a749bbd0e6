// @vitest-environment happy-dom
import { readFileSync } from "node:fs";
import { beforeEach, expect, test, vi } from "vitest";
import {
  type LessonProgress,
  NO_PROGRESS,
  type Progress,
  readProgress,
  withLesson,
} from "../../../src/lesson/progress/progress.ts";
import { packProgress } from "../../../src/lesson/progress/progress-pack.ts";
import { readLesson } from "../../../src/lesson/read/read.ts";
import { deviceRecord } from "../../../src/lms/device.ts";
import type { RecordAdapter, Report } from "../../../src/lms/record-adapter.ts";
import { openProgress } from "../../../src/modes/study/kept-progress.ts";

const NAME = "lungward.progress";
const lesson: LessonProgress = { step: "a", seen: ["a"], finished: false, answers: {}, recalled: {} };
const openTab = () => openProgress(deviceRecord(() => localStorage));
const stored = () => Object.keys(readProgress(localStorage.getItem(NAME)).lessons).sort();

beforeEach(() => localStorage.clear());

test("two tabs write in turn before either hears of the other: both lessons stay", async () => {
  const [one, two] = [await openTab(), await openTab()];
  one.keep(withLesson(one.progress.peek(), "one", lesson), "one#a", []);
  two.keep(withLesson(two.progress.peek(), "two", lesson), "two#a", []);
  expect(stored()).toEqual(["one", "two"]);
  one.keep(withLesson(one.progress.peek(), "three", lesson), "three#a", []);
  expect(stored()).toEqual(["one", "three", "two"]);
  expect(Object.keys(one.progress.peek().lessons)).toContain("two");
});

test("what a version to come has written meanwhile is not overwritten", async () => {
  const tab = await openTab();
  const later = JSON.stringify({ ...NO_PROGRESS, version: 2 });
  localStorage.setItem(NAME, later);
  tab.keep(withLesson(NO_PROGRESS, "one", lesson), "one#a", []);
  expect(localStorage.getItem(NAME)).toBe(later);
  expect(tab.keeps.peek()).toBe(false);
});

test("nor is what a version to come has packed for a course system", async () => {
  const later = packProgress({ ...NO_PROGRESS, version: 2 } as unknown as Progress, 4096);
  const reports: Report[] = [];
  const report = async (given: Report) => reports.push(given) > 0;
  const device = deviceRecord(() => localStorage);
  const tab = await openProgress({ ...device, kind: "scorm", now: null, load: async () => later, report });
  expect(tab.keeps.peek()).toBe(false);
  tab.keep(withLesson(NO_PROGRESS, "one", lesson), "one#a", []);
  expect(reports).toEqual([]);
});

test("a course system hears of the share of all the course's questions, unanswered ones among them", async () => {
  const file = "lessons/en/04-energy-loss.md";
  const loss = readLesson(readFileSync(file, "utf8"), file).value!;
  const questions = loss.steps.filter(({ question }) => question);
  const reports: Report[] = [];
  const report = async (given: Report) => reports.push(given) > 0;
  const tab = await openProgress({ ...deviceRecord(() => localStorage), kind: "scorm", report });
  const answers = { [questions[0]!.id]: { given: "x", right: true, tries: 1, day: "2026-11-29" } };
  const other = { ...lesson, answers, recalled: { "one#a": { right: true, day: "2026-11-29" } } };
  tab.keep(withLesson(withLesson(NO_PROGRESS, "other", other), loss.id, { ...lesson, answers }), "", [loss]);
  expect(reports[0]!.score).toEqual({ right: 1, asked: questions.length });
});

test.each([
  [false, "looking"],
  [true, "scorm"],
])("where a course system records: %s, the page says %s", async (records, says) => {
  const voice = { ...deviceRecord(() => localStorage), kind: "scorm" as const, records: () => records };
  expect((await openProgress(voice)).voice).toBe(says);
});

test("a visit is ended once the last report is in", async () => {
  const done: string[] = [];
  let reported = () => {};
  const voice: RecordAdapter = {
    ...deviceRecord(() => localStorage),
    report: () =>
      new Promise((kept) => {
        reported = () => kept(done.push("reported") > 0);
      }),
    close: async () => void done.push("closed"),
  };
  const { keep, end, progress } = await openProgress(voice);
  keep(withLesson(progress.peek(), "one", lesson), "one#a", []);
  const ended = end();
  await Promise.resolve();
  expect(done).toEqual([]);
  reported();
  await ended;
  expect(done).toEqual(["reported", "closed"]);
});

test("a course system that does not answer holds no one back for long", async () => {
  vi.useFakeTimers();
  const { end } = await openProgress({
    ...deviceRecord(() => localStorage),
    close: () => new Promise(() => {}),
  });
  const ended = end();
  await vi.advanceTimersByTimeAsync(5000);
  await ended;
  vi.useRealTimers();
});
