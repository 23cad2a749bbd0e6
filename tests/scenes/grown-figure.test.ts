import { describe, expect, test } from "vitest";
import { crotchOf, grownFigure, headOf } from "../../src/scenes/growth/grown-figure.ts";

const spots = (years: number) => grownFigure(years).parts.flat();
/** Widest between two heights, ears included, of the height. */
const wideIn = (years: number, from: number, to: number) =>
  2 *
  Math.max(
    ...spots(years)
      .filter(([, y]) => y > from && y < to)
      .map(([x]) => x),
  );

describe("a standing figure of an age", () => {
  test("has a head of 1 in 5.75 of the height at five years, of between a seventh and an eighth when grown", () => {
    expect(1 / headOf(5)).toBeCloseTo(5.75, 1);
    expect(1 / headOf(19)).toBeGreaterThan(7);
    expect(1 / headOf(19)).toBeLessThan(8);
    for (let years = 5; years < 18; years++) expect(headOf(years + 1)).toBeLessThan(headOf(years));
  });

  test("has longer legs for its height as it grows, and a narrower head", () => {
    expect(crotchOf(5)).toBeLessThan(crotchOf(11));
    expect(crotchOf(11)).toBeLessThan(crotchOf(19));
    const [young, grown] = [5, 19].map((years) => wideIn(years, 1 - 0.8 * headOf(years), 1)) as [
      number,
      number,
    ];
    expect(young).toBeGreaterThan(0.115);
    expect(young).toBeLessThan(0.145);
    expect(grown).toBeGreaterThan(0.08);
    expect(grown).toBeLessThan(0.105);
  });

  test.each([2, 5, 9, 13, 19, 40])(
    "stands on the ground, as tall as said, alike on both sides: %d years",
    (years) => {
      const ys = spots(years).map(([, y]) => y);
      expect(Math.min(...ys)).toBeCloseTo(0, 1);
      expect(Math.min(...ys)).toBeGreaterThanOrEqual(0);
      expect(Math.max(...ys)).toBeCloseTo(1, 2);
      const xs = spots(years).map(([x]) => x);
      expect(Math.max(...xs)).toBeCloseTo(-Math.min(...xs), 6);
      // Arms included.
      expect(2 * Math.max(...xs)).toBeLessThan(0.38);
    },
  );
});
