import { expect, test } from "vitest";
import { readLessonFiles } from "../../../src/cli/lesson-files.ts";
import { rememberAnswers } from "../../../src/lesson/check/check-model.ts";
import { checkPlaces } from "../../../src/lesson/check/check-places.ts";
import { dealAnswers } from "../../../src/lesson/judge/deal.ts";
import type { Lesson } from "../../../src/lesson/lesson.ts";
import { readLesson, refuseIn } from "../../../src/lesson/read/read.ts";
import { solve } from "../../../src/sim/circulation/solve.ts";

/** As the checker asks: a lesson's questions share most of their states. */
const answer = rememberAnswers(solve);
const answers = ["right", "other", "third"];
const step = (id: string, right: string, more = "") =>
  `## ${id} {#${id}}\n\n\`\`\`question\nkind: choose\nask: Which?\n${more}answers:\n${answers
    .map((each) => `  ${each}: { say: ${each}, because: Since., right: ${each === right} }\n`)
    .join("")}\`\`\`\n\n### plain\nWords.\n\n`;
const lessonOf = (...steps: string[]): Lesson => {
  const text = `---\nid: a-lesson\nnumber: 1\ntitle: T\nreader: r\naim: a\nremember: m\nminutes: 3\n---\n\n${steps.join("")}`;
  const { value, faults } = readLesson(text, "a.md");
  if (!value) throw new Error(JSON.stringify(faults));
  return value;
};
const ordersOf = (lesson: Lesson, reader: number): string[] =>
  dealAnswers(lesson, reader).steps.map(({ question }) =>
    question && "answers" in question ? question.answers.map(({ id }) => id).join() : "",
  );
const faultsOf = (lesson: Lesson): string[] => {
  const { refuse, faults } = refuseIn("a.md");
  checkPlaces(lesson, answer, refuse);
  return faults.map(({ found }) => found);
};

test("a reader sees each question's answers at the same places each time; readers differ", () => {
  const lesson = lessonOf(step("one", "right"), step("two", "right"));
  const seen = Array.from({ length: 200 }, (_, reader) => ordersOf(lesson, reader).join(" "));
  expect(Array.from({ length: 200 }, (_, reader) => ordersOf(lesson, reader).join(" "))).toEqual(seen);
  // 3 answers have 6 orders; the right ones of two neighbours never stand at one place.
  expect(new Set(seen.map((each) => each.split(" ")[0])).size).toBe(6);
  expect(new Set(seen).size).toBe(24);
});

test("the answer written first comes to each place once before any place again, for every reader", () => {
  const lesson = lessonOf(...["one", "two", "three"].map((id) => step(id, "right")));
  for (let reader = 0; reader < 100; reader++) {
    const places = ordersOf(lesson, reader).map((order) => order.split(",").indexOf("right"));
    expect([...places].sort()).toEqual([0, 1, 2]);
  }
});

test("over many readers the right answer is at each place about equally often", () => {
  const lesson = lessonOf(step("one", "other"));
  const counts = [0, 0, 0];
  for (let reader = 0; reader < 3000; reader++)
    counts[ordersOf(lesson, reader)[0]!.split(",").indexOf("other")]!++;
  // 1000 each, standard deviation 26
  for (const count of counts) expect(Math.abs(count - 1000)).toBeLessThan(130);
});

test("a scale keeps its order for every reader; one that leaves an answer out is refused", () => {
  const lesson = lessonOf(step("one", "right", "scale: [third, right, other]\n"));
  for (let reader = 0; reader < 50; reader++) expect(ordersOf(lesson, reader)).toEqual(["third,right,other"]);
  expect(() => lessonOf(step("one", "right", "scale: [third, right]\n"))).toThrow(/every key of the answers/);
});

test("a lesson whose right answers are all or mostly at one place is a fault", () => {
  const scale = "scale: [right, other, third]\n";
  const scales = (...right: string[]) => right.map((each, n) => step(`s${n}`, each, scale));
  expect(faultsOf(lessonOf(...scales("right", "right", "right")))).toEqual([
    "all right answers at one place for 60 of 60 readers",
    "100 % of the right answers at place 1",
  ]);
  expect(faultsOf(lessonOf(...scales("right", "right", "right", "third")))).toEqual([
    "75 % of the right answers at place 1",
  ]);
  expect(faultsOf(lessonOf(...scales("right", "other", "third")))).toEqual([]);
  expect(faultsOf(lessonOf(...["one", "two", "three"].map((id) => step(id, "right"))))).toEqual([]);
});

test("in the kit's own lessons every place has its part of the right answers", () => {
  const lessons = readLessonFiles("lessons").lessons.en!;
  const { refuse, faults } = refuseIn("lessons");
  const shares = lessons.map((lesson) => checkPlaces(lesson, answer, refuse));
  expect(faults).toEqual([]);
  for (const place of [0, 1, 2]) {
    const mean = shares.reduce((sum, each) => sum + (each[place] ?? 0), 0) / lessons.length;
    expect(mean).toBeGreaterThan(0.15);
    expect(mean).toBeLessThan(0.5);
  }
});
