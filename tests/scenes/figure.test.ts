import { describe, expect, test } from "vitest";
import { chestOf, type Figure, going, standing } from "../../src/scenes/drawing/figure.ts";

const spots = ({ limbs }: Figure) => limbs.flatMap(({ through }) => through);
const width = (figure: Figure): number => {
  const xs = spots(figure).map(([x]) => x);
  return Math.max(...xs) - Math.min(...xs);
};

describe("a person as a plain shape", () => {
  test("a child's head is a greater part of its height", () => {
    expect(standing(5).head.radius).toBeGreaterThan(1.2 * standing(19).head.radius);
    for (const years of [2, 5, 12, 19, 40]) {
      const { at, radius } = standing(years).head;
      expect(at[1] + radius).toBeCloseTo(1, 9);
    }
  });

  test("a child's legs are a smaller part of its height", () => {
    const hip = (years: number) => standing(years).limbs[0]!.through[0]![1];
    expect(hip(5)).toBeLessThan(hip(19) - 0.03);
    expect(hip(5)).toBeLessThan(hip(11));
    for (const years of [2, 5, 12, 19, 40]) {
      expect(chestOf(years)).toBeGreaterThan(hip(years) + 0.2);
      expect(chestOf(years)).toBeLessThan(standing(years).head.at[1] - standing(years).head.radius);
    }
  });

  test("a foot is on the ground at each moment of a step, and none is under it", () => {
    for (const pace of [0, 0.3, 1])
      for (let phase = 0; phase < 6.3; phase += 0.3) {
        const lowest = Math.min(...spots(going(pace, phase)).map(([, y]) => y));
        expect(lowest).toBeGreaterThan(-0.02);
        expect(lowest).toBeLessThan(0.06);
      }
  });

  test("more effort makes longer steps and leans forward; without any the person stands", () => {
    const widest = (pace: number) =>
      Math.max(...Array.from({ length: 20 }, (_, i) => width(going(pace, (i * Math.PI) / 10))));
    expect(widest(0)).toBeLessThan(0.15);
    expect(widest(0.3)).toBeGreaterThan(2 * widest(0));
    expect(widest(1)).toBeGreaterThan(1.2 * widest(0.3));
    expect(going(1, 1).head.at[0]).toBeGreaterThan(going(0.2, 1).head.at[0] + 0.03);
  });
});
