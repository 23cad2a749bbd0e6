import { describe, expect, test } from "vitest";
import {
  CAPILLARY,
  INITIAL_HALF,
  LUMEN,
  LYMPH_HALF,
  tissuePlan,
  WALL,
  WIDTH,
} from "../../src/scenes/exchange/tissue-plan.ts";

describe.each([800, 1000, 1240])("a piece of tissue %i high", (height) => {
  const plan = tissuePlan(height);
  const lowest = (line: { readonly y: Float64Array }) => Math.max(...line.y);

  test("fills its room from the capillary to the cavity", () => {
    expect(plan.height).toBe(height);
    expect(plan.cavity.bottom).toBeGreaterThan(height - 60);
    expect(lowest(plan.lymph)).toBeLessThan(plan.cavity.top - LYMPH_HALF);
    for (const { line } of plan.initial)
      expect(Math.min(...line.y)).toBeGreaterThan(lowest(CAPILLARY) + LUMEN + WALL + INITIAL_HALF);
  });

  test("has cells all over, each nearer to its own middle than to another's", () => {
    for (let x = 20; x < WIDTH; x += 60)
      for (let y = 20; y < height; y += 60)
        expect(
          Math.min(...plan.cells.map(({ at }) => Math.hypot(at[0] - x, at[1] - y))),
          `${x} ${y}`,
        ).toBeLessThan(125);
    for (const { at, around } of plan.cells) {
      expect(around.length).toBeGreaterThan(2);
      for (const [x, y] of around) {
        const own = Math.hypot(x, y);
        for (const other of plan.cells)
          if (other.at !== at)
            expect(Math.hypot(at[0] + x - other.at[0], at[1] + y - other.at[1])).toBeGreaterThan(own);
      }
    }
  });

  test("lets lymph run from blind ends between the cells to the collecting vessel at its border", () => {
    for (const { line, joins } of plan.initial) {
      const end = [line.x.at(-1)!, line.y.at(-1)!];
      const at = Math.round(joins * (plan.lymph.x.length - 1));
      expect(Math.hypot(plan.lymph.x[at]! - end[0]!, plan.lymph.y[at]! - end[1]!)).toBeLessThan(12);
    }
    expect(plan.lymph.x.at(-1)).toBeLessThan(0);
    expect(Math.max(...plan.lymph.x)).toBeLessThan(WIDTH);
  });
});

test("a room lower or taller than the plan can be is not followed", () => {
  expect(tissuePlan(300).height).toBe(800);
  expect(tissuePlan(3000).height).toBe(1240);
});
