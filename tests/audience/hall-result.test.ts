/** The bars that stage and phones share, and the table of counts. */
import * as v from "valibot";
import { expect, test } from "vitest";
import { barOf } from "../../src/audience/bar-of.ts";
import { asking, reading } from "../../src/audience/line-messages.ts";
import { LONGEST_TEXT } from "../../src/audience/room-code.ts";
import { cutText } from "../../src/modes/lecture/audience/cut-text.ts";
import { shownResult } from "../../src/modes/lecture/audience/hall-result.ts";
import { histogramOf } from "../../src/modes/lecture/audience/histogram.ts";
import { startHall } from "../../src/modes/lecture/hall/hall.ts";

const count = { ...startHall("lesson#step"), hands: ["a", "b"], phones: { a: 3 } };

test("nothing is shown before the speaker shows it, and the model's answer comes last", () => {
  expect(shownResult(["a", "b"], count, "a")).toBeNull();
  expect(shownResult(["a", "b"], { ...count, phase: "locked" }, "a")).toBeNull();
  const shown = { counts: [4, 1], edges: [], model: null };
  expect(shownResult(["a", "b"], { ...count, phase: "shown" }, "a")).toEqual(shown);
  expect(shownResult(["a", "b"], { ...count, phase: "compared" }, "a")).toEqual({ ...shown, model: "a" });
});

test.each([
  [[], null],
  [[7], null],
  [[7, 7, 7], 7],
  [[-3, 0, 2.5, 8, 8.5], 40],
  [[...Array.from({ length: 200 }, (_, n) => 10 + (n % 30) / 10), 1e9, -1e9], 12],
] as const)("numbers %j are each in one bar, and bars are few", (numbers, model) => {
  const { counts, edges } = histogramOf(numbers, model);
  expect(counts.reduce((sum, each) => sum + each, 0)).toBe(numbers.length);
  expect(counts.length).toBe(edges.length - 1);
  expect(counts.length).toBeLessThanOrEqual(20);
  expect([...edges].sort((a, b) => a - b)).toEqual(edges);
  expect(new Set(edges).size).toBe(edges.length);
  for (const value of model === null ? numbers : [...numbers, model]) {
    const bar = barOf(edges, value);
    expect(edges[bar]).toBeLessThanOrEqual(value);
    expect(edges[bar + 1]).toBeGreaterThanOrEqual(value);
  }
});

test.each([
  [[1e9], null],
  [[-1e9], null],
  [[-1e9, 1e9], 7],
] as const)("the server takes the bars of %j, at the ends of what a phone can answer", (numbers, model) => {
  const count = { ...startHall("lesson#step"), phase: "compared" as const, numbers: [...numbers] };
  const message = { kind: "ask", question: null, locked: true, result: shownResult([], count, model) };
  expect(v.safeParse(asking, message).issues).toBeUndefined();
});

test("the server takes a question and a step of any length, cut at its bounds", () => {
  const long = "x".repeat(10_000);
  const say = { en: cutText(long, LONGEST_TEXT.ask) };
  const question = { key: "lesson#step", ask: say, choices: [{ id: "a", say }], unit: null };
  const step = { title: cutText(long, LONGEST_TEXT.title), text: cutText(long, LONGEST_TEXT.step) };
  const ask = { kind: "ask", question, locked: false, result: null };
  expect(v.safeParse(asking, ask).issues).toBeUndefined();
  const words = { kind: "words", step: "lesson#step", words: { en: step } };
  expect(v.safeParse(reading, words).issues).toBeUndefined();
  expect(cutText("as it is", 8)).toBe("as it is");
});

test("a stray or the model's number moves an end to the next step, so that no end tells what someone gave", () => {
  expect(histogramOf([45, 52.5, 60], 43.21).edges[0]).toBe(42);
  expect(histogramOf([5, 6, 7, 8, 9, 10], 31.7).edges.at(-1)).toBe(32);
});

test("bars have even ends that a hall can read, but for strays", () => {
  expect(histogramOf([5.1, 6.4, 7.2, 7.9, 9.3, 11.8], null).edges).toEqual([5, 6, 7, 8, 9, 10, 11, 12]);
});

test("there are never more bars than a low stage holds", () => {
  for (let span = 1; span < 400; span += 1.7) {
    for (const low of [0, 3.4, 40]) {
      const { counts } = histogramOf([low, low + span / 2, low + span], null);
      expect(counts.length).toBeGreaterThanOrEqual(4);
      expect(counts.length).toBeLessThanOrEqual(9);
    }
  }
});
