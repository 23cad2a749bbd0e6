// @vitest-environment happy-dom
import { expect, test } from "vitest";
import { layOut, saidBy, written } from "../../src/scenes/drawing/written.ts";
import { measureLetters } from "./wide-letters.ts";

measureLetters();
/** CSS px; a letter is 10 wide */
const HAND = { family: "Any", size: 10 / 0.58 };

test("words stand in one line unless they have less room, and break between words alone", () => {
  expect(layOut("from legs and gut", HAND).lines).toEqual(["from legs and gut"]);
  expect(layOut("from legs and gut", HAND, 95).lines).toEqual(["from legs", "and gut"]);
  expect(layOut("from cavopulmonary veins", HAND, 95).lines).toEqual(["from", "cavopulmonary", "veins"]);
  expect(layOut("one\ntwo", HAND).lines).toEqual(["one", "two"]);
});

test("words are as wide as their longest line and as high as all of them", () => {
  const [one, two] = [layOut("from legs and gut", HAND), layOut("from legs and gut", HAND, 95)];
  expect(two.width).toBeCloseTo(90, 6);
  expect(two.height).toBeCloseTo(2 * one.height, 6);
  expect(layOut("", HAND)).toMatchObject({ width: 0, height: one.height });
});

test("the same words are laid out once, and a picture says what it shows", () => {
  const laid = layOut("gut", HAND);
  expect(layOut("gut", HAND)).toBe(laid);
  const { view, write } = written();
  expect(saidBy(view)).toBeUndefined();
  write(laid, "#123456");
  expect(saidBy(view)).toEqual({ laid, colour: "#123456" });
});
