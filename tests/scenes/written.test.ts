// @vitest-environment happy-dom
import { expect, test } from "vitest";
import { layOut, saidBy, written } from "../../src/scenes/drawing/written.ts";
import { measureLetters, type Painted } from "./wide-letters.ts";

const painted: Painted[] = [];
measureLetters((each) => painted.push(each));
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

test.each([1, 1.5, 2])(
  "words are painted in whole device pixels, %d to a CSS px, and stay as large",
  (density) => {
    painted.length = 0;
    const laid = layOut("from legs and gut", HAND, 95);
    const { view, write, paint } = written();
    write(laid, "#123456");
    paint(density);
    const air = Math.ceil(0.2 * HAND.size);
    expect(painted.map(({ words }) => words)).toEqual(["from legs", "and gut"]);
    for (const [i, { canvas, colour, x, y, scale }] of painted.entries()) {
      expect(canvas.width).toBe(Math.ceil((90 + 2 * air) * density));
      expect(canvas.height).toBe(Math.ceil(Math.ceil(laid.height + 2 * air) * density));
      expect([colour, scale, x]).toEqual(["#123456", density, air]);
      expect(y).toBeCloseTo(air + laid.baseline + (i * laid.height) / 2, 6);
    }
    const { orig, trim, source } = view.texture;
    expect([orig.width, orig.height]).toEqual([laid.width, laid.height]);
    // A pixel of the canvas is one of the device.
    expect(trim!.width * density).toBeCloseTo(source.width, 6);
    expect([trim!.x, trim!.y]).toEqual([-air, -air]);
  },
);

test("the same words are painted once, and anew in another colour or as densely as another screen", () => {
  painted.length = 0;
  const laid = layOut("gut", HAND);
  const { view, write, paint } = written();
  paint(1);
  expect(painted).toHaveLength(0);
  write(laid, "#123456");
  paint(1);
  const first = view.texture;
  write(laid, "#123456");
  paint(1);
  expect(painted).toHaveLength(1);
  write(laid, "#654321");
  paint(1);
  paint(2);
  expect(painted.map(({ colour, scale }) => [colour, scale])).toEqual([
    ["#123456", 1],
    ["#654321", 1],
    ["#654321", 2],
  ]);
  expect(first.destroyed).toBe(true);
});
