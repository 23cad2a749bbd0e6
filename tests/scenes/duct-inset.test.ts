// @vitest-environment happy-dom
import { describe, expect, test } from "vitest";
import { insetIn, insetNote } from "../../src/scenes/exchange/duct-inset.ts";
import { LUMEN, LYMPH_HALF, tissuePlan, WALL } from "../../src/scenes/exchange/tissue-plan.ts";
import { darkTheme } from "../../src/scenes/theme/theme.ts";

describe("the picture of where lymph goes", () => {
  test("stands between capillary and collecting vessel, on neither, and points to where that leaves", () => {
    for (const height of [1000, 1120, 1240]) {
      const plan = tissuePlan(height);
      const { x, y, width, height: high, from } = insetIn(plan, { scale: 0.6 }, 13)!;
      expect(y).toBeGreaterThan(192 + LUMEN + WALL);
      const over = Array.from(plan.lymph.x, (at, i) => [at, plan.lymph.y[i]!] as const).filter(
        ([at]) => at > x && at < x + width,
      );
      for (const [, middle] of over) expect(y + high).toBeLessThan(middle - LYMPH_HALF);
      const leaves = plan.lymph.y[plan.lymph.x.findIndex((at) => at < 0)]!;
      expect(Math.abs(from - leaves)).toBeLessThan(6);
    }
  });

  test("is left out where there is no room for it or its number", () => {
    expect(insetIn(tissuePlan(800), { scale: 0.6 }, 13)).toBeNull();
    expect(insetIn(tissuePlan(1240), { scale: 0.3 }, 13)).toBeNull();
  });

  test("has the pressure in its upper right corner", () => {
    const fit = { x: 100, y: 50, scale: 0.5 };
    const inset = insetIn(tissuePlan(1240), fit, 12)!;
    const note = insetNote({ ...fit, inset }, ["13.1 mmHg", "4 in health"], 12, darkTheme(String));
    expect(note.anchor).toEqual([1, 0]);
    expect(note.x).toBeLessThan(100 + 0.5 * (inset.x + inset.width));
    expect(note.y).toBeGreaterThan(50 + 0.5 * inset.y);
  });
});
