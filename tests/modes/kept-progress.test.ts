// @vitest-environment happy-dom
import { beforeEach, expect, test } from "vitest";
import { type LessonProgress, NO_PROGRESS, readProgress, withLesson } from "../../src/lesson/progress.ts";
import { deviceRecord } from "../../src/lms/device.ts";
import { openProgress } from "../../src/modes/study/kept-progress.ts";

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
