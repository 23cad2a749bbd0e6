import { expect, test } from "vitest";
import { readingClock } from "../../src/scenes/drawing/reading-clock.ts";

test("a reading stands for a quarter of a second and then belongs to the moment that is seen", () => {
  const read = readingClock();
  expect(read(10, 0)).toBe(10);
  expect(read(10.1, 0.1)).toBe(10);
  expect(read(10.2, 0.1)).toBe(10);
  expect(read(10.3, 0.1)).toBe(10.3);
});

test("held or slowed it arrives at the moment itself; a picture apart from the screen shows its own", () => {
  const read = readingClock();
  read(4, 0);
  expect(read(4.01, 0.2)).toBe(4);
  expect(read(4.01, 0.06)).toBe(4.01);
  expect(read(7, Number.POSITIVE_INFINITY)).toBe(7);
});
