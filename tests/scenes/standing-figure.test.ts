import { describe, expect, test } from "vitest";
import { chestOf, crotchOf, headOf, standingFigure } from "../../src/scenes/growth/standing-figure.ts";

const spots = (years: number) => standingFigure(years).parts.flatMap(({ outline }) => outline);

describe("a standing figure of an age", () => {
  test("has a head of 1 in 5.75 of the height at five years, of between a seventh and an eighth when grown", () => {
    expect(1 / headOf(5)).toBeCloseTo(5.75, 1);
    expect(1 / headOf(19)).toBeGreaterThan(7);
    expect(1 / headOf(19)).toBeLessThan(8);
    for (let years = 5; years < 18; years++) expect(headOf(years + 1)).toBeLessThan(headOf(years));
  });

  test("has longer legs for its height as it grows", () => {
    expect(crotchOf(5)).toBeLessThan(crotchOf(11));
    expect(crotchOf(11)).toBeLessThan(crotchOf(19));
  });

  test.each([2, 5, 9, 13, 19, 40])(
    "stands on the ground, as tall as said, one arm bent: %d years",
    (years) => {
      const ys = spots(years).map(([, y]) => y);
      expect(Math.min(...ys)).toBeCloseTo(0, 6);
      expect(Math.max(...ys)).toBeGreaterThan(0.99);
      expect(Math.max(...ys)).toBeLessThan(1.01);
      // The bent elbow stands out further than the hanging arm, at the height of the waist, and the hand lies nearer.
      const skin = standingFigure(years).parts[2]!.outline;
      const [left, right] = [-1, 1].map((side) => Math.max(...skin.map(([x]) => side * x))) as [
        number,
        number,
      ];
      expect(left).toBeGreaterThan(right);
      const elbow = skin.find(([x]) => -x === left)!;
      expect(elbow[1]).toBeGreaterThan(crotchOf(years) + 0.06);
      expect(Math.max(left, right)).toBeLessThan(0.2);
      expect(chestOf(years)).toBeGreaterThan(crotchOf(years) + 0.2);
      expect(chestOf(years)).toBeLessThan(1 - headOf(years));
      expect(standingFigure(years).eyes).toHaveLength(2);
    },
  );
});
