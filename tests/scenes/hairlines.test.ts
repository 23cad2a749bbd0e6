import { expect, test } from "vitest";
import { turnsOf } from "../../src/scenes/circuit/hairlines.ts";

const STEP = 5;
/** A plate whose line, in its own way, goes straight up or down at its edge or slants as far as `bend`. */
const plate = (
  x: number,
  y: number,
  width: number,
  to: readonly [number, number],
  onLeft = false,
  bend?: number,
) => ({
  onLeft,
  box: { x, y, width, height: 30 },
  to,
  bend: bend ?? (onLeft ? x + width : x),
});

test("a line that goes down past other plates turns inside all of them, and the upper one nearer the body", () => {
  const plates = [
    plate(455, 0, 70, [350, 300]),
    plate(427, 40, 98, [370, 340]),
    plate(420, 80, 73, [345, 350]),
  ];
  expect(turnsOf(plates, STEP)).toEqual([420 - 2 * STEP, 420 - STEP, null]);
});

test("a line that slants clear of a plate, and one of the other side, is left as it is", () => {
  const plates = [
    plate(0, 0, 80, [200, 80], true, 160),
    plate(300, 40, 80, [200, 55]),
    plate(0, 34, 85, [200, 60], true, 160),
  ];
  expect(turnsOf(plates, STEP)).toEqual([null, null, null]);
  expect(turnsOf([plates[0]!, plate(0, 34, 150, [200, 60], true, 160)], STEP)[0]).toBe(150 + STEP);
});
