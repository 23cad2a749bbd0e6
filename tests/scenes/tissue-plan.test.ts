import { describe, expect, test } from "vitest";
import {
  CAPILLARY,
  LUMEN,
  LYMPH_HALF,
  tissuePlan,
  WALL,
  WIDTH,
} from "../../src/scenes/exchange/tissue-plan.ts";

/** Half the height of a cell, plane units. */
const CELL = 38;

describe.each([620, 760, 1000, 1240])("a piece of tissue %i high", (height) => {
  const plan = tissuePlan(height);

  test("fills its room from the capillary to the cavity", () => {
    expect(plan.height).toBe(height);
    expect(plan.cavity.bottom).toBeGreaterThan(height - 30);
    expect(Math.max(...plan.lymph.y)).toBeLessThan(plan.cavity.top - LYMPH_HALF);
    const reach = (down: boolean) =>
      plan.cells.map(({ at: [, y] }) => y).reduce((a, b) => (down ? Math.max(a, b) : Math.min(a, b)));
    expect(reach(false)).toBeLessThan(230);
    expect(reach(true)).toBeGreaterThan(height - 130);
  });

  test("has cells beside its vessels and its cavity, and none on them or on another", () => {
    expect(plan.cells.length).toBeGreaterThan(10);
    plan.cells.forEach(({ at: [x, y] }, i) => {
      for (const [line, half] of [
        [CAPILLARY, LUMEN + WALL],
        ...[plan.lymph, ...plan.initial].map((each) => [each, LYMPH_HALF] as const),
      ] as const)
        expect(
          line.x.reduce((least, px, k) => Math.min(least, Math.hypot(px - x, line.y[k]! - y)), 1e9),
        ).toBeGreaterThan(half + CELL);
      const { left, top } = plan.cavity;
      expect(x < left - CELL || y < top - CELL).toBe(true);
      for (const { at } of plan.cells.slice(i + 1))
        expect(Math.hypot(at[0] - x, (at[1] - y) * 1.5)).toBeGreaterThan(2 * CELL);
    });
  });

  test("lets lymph run from blind ends between the cells to the collecting vessel at its border", () => {
    for (const { x, y } of plan.initial) {
      const [ex, ey] = [x.at(-1)!, y.at(-1)!];
      expect(
        Math.min(...plan.lymph.x.map((px, k) => Math.hypot(px - ex, plan.lymph.y[k]! - ey))),
      ).toBeLessThan(12);
    }
    expect(plan.lymph.x.at(-1)).toBeLessThan(0);
    expect(Math.max(...plan.lymph.x)).toBeLessThan(WIDTH);
  });
});

test("a room lower or taller than the plan can be is not followed", () => {
  expect(tissuePlan(300).height).toBe(620);
  expect(tissuePlan(3000).height).toBe(1240);
});
