import { readFileSync } from "node:fs";
import { expect, test } from "vitest";
import {
  type Course,
  courseScore,
  doneOf,
  libraryOfCourse,
  readCourse,
} from "../../../src/lesson/library/lesson-course.ts";
import type { Library } from "../../../src/lesson/library/library.ts";
import { NO_PROGRESS, withLesson } from "../../../src/lesson/progress/progress.ts";
import { readLesson } from "../../../src/lesson/read/read.ts";

const lessons = ["03-pathways", "04-energy-loss"].map(
  (id) => readLesson(readFileSync(`lessons/en/${id}.md`, "utf8"), id).value!,
);
const [pathways, loss] = lessons as [(typeof lessons)[0], (typeof lessons)[0]];
const library = { lessons } as unknown as Library;
const course: Course = {
  version: 1,
  lessons: ["a"],
  textVersion: "plain",
  passMark: 0.5,
  completedWhen: "seen",
  own: [],
};

test("the course's lessons alone, in its order and numbered by it, ask again only for each other", () => {
  const both = libraryOfCourse(library, { lessons: ["04-energy-loss", "gone", "03-pathways"] }).lessons;
  expect(both.map(({ id, number }) => [id, number])).toEqual([
    ["04-energy-loss", 1],
    ["03-pathways", 2],
  ]);
  expect(both[0]!.recall).toEqual(loss.recall);
  const alone = libraryOfCourse(library, { lessons: ["04-energy-loss"] }).lessons[0]!;
  expect(loss.recall.some(({ lesson }) => lesson === "03-pathways")).toBe(true);
  expect(alone.recall.every(({ lesson }) => lesson === null)).toBe(true);
});

test("done: lessons to their end, questions judged, steps opened", () => {
  const question = loss.steps.find((step) => step.question)!;
  const progress = withLesson(NO_PROGRESS, loss.id, {
    step: "",
    seen: loss.steps.map(({ id }) => id),
    finished: true,
    answers: { [question.id]: { given: "x", right: false, tries: 1, day: "" } },
    recalled: {},
  });
  expect(doneOf("finished", progress, lessons)).toBe(0.5);
  expect(doneOf("seen", progress, [loss])).toBe(1);
  const asked = loss.steps.filter((step) => step.question).length;
  expect(doneOf("questions", progress, [loss])).toBeCloseTo(1 / asked);
  const predicted = withLesson(NO_PROGRESS, loss.id, {
    ...progress.lessons[loss.id]!,
    answers: { [question.id]: { given: "x", right: null, tries: 1, day: "" } },
  });
  expect(doneOf("questions", predicted, [loss])).toBe(0);
  const silent = { ...pathways, steps: pathways.steps.filter((step) => !step.question) };
  expect(doneOf("questions", NO_PROGRESS, [silent])).toBe(0);
  const opened = { ...progress.lessons[loss.id]!, seen: silent.steps.map(({ id }) => id), answers: {} };
  expect(doneOf("questions", withLesson(NO_PROGRESS, silent.id, opened), [silent])).toBe(1);
  expect(doneOf("finished", progress, [])).toBe(0);
});

test("the score: right at the first try, of all questions of the course's lessons and of them alone", () => {
  const asked = loss.steps.filter((step) => step.question).map(({ id }) => id);
  const attempt = (right: boolean | null) => ({ given: "x", right, tries: 1, day: "" });
  const done = {
    step: "",
    seen: [],
    finished: true,
    answers: { [asked[0]!]: attempt(true), [asked[1]!]: attempt(false), gone: attempt(true) },
    // Asked again on later days: no question of its own.
    recalled: { [`${loss.id}#${asked[1]}`]: { right: true, day: "" } },
  };
  const progress = withLesson(withLesson(NO_PROGRESS, loss.id, done), "another", done);
  expect(asked.length).toBeGreaterThan(2);
  expect(courseScore(progress, [loss])).toEqual({ right: 1, asked: asked.length });
  expect(courseScore(progress, lessons).asked).toBeGreaterThan(asked.length);
  expect(courseScore(progress, [])).toEqual({ right: 0, asked: 0 });
});

test("a course is read as it was written", () => {
  expect(readCourse(JSON.stringify(course))).toEqual(course);
});

test.each([
  ["", "course"],
  ["{", "course"],
  ["null", "course"],
  ["{}", "course.version"],
  [JSON.stringify({ ...course, passMark: 2 }), "course.passMark"],
  [JSON.stringify({ ...course, lessons: [] }), "course.lessons"],
  [JSON.stringify({ ...course, textVersion: "x".repeat(5000) }), "course.textVersion"],
])("what is no course is told by its key, what was found and what is allowed: %.40s", (text, path) => {
  const fault = readCourse(text);
  expect(fault).toMatchObject({ path, found: expect.any(String), allowed: expect.stringMatching(/./) });
  expect(JSON.stringify(fault).length).toBeLessThan(400);
});
