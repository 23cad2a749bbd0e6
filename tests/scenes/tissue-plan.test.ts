import { describe, expect, test, vi } from "vitest";
import {
  CAPILLARY,
  type Cell,
  INITIAL_HALF,
  LUMEN,
  LYMPH_HALF,
  tissuePlan,
  WALL,
  WIDTH,
} from "../../src/scenes/exchange/tissue-plan.ts";

vi.mock("pixi.js", () => ({}));

describe.each([880, 1000, 1240])("a piece of tissue %i high", (height) => {
  const plan = tissuePlan(height);
  const lowest = (line: { readonly y: Float64Array }) => Math.max(...line.y);

  test("fills its room from the capillary to the cavity", () => {
    expect(plan.height).toBe(height);
    expect(plan.cavity.bottom).toBeGreaterThan(height - 80);
    expect(lowest(plan.lymph)).toBeLessThan(plan.cavity.top - LYMPH_HALF);
    for (const { line } of plan.initial)
      expect(Math.min(...line.y)).toBeGreaterThan(lowest(CAPILLARY) + LUMEN + WALL + INITIAL_HALF);
  });

  test("has cells of each kind all over, none on another", () => {
    const nearVessel = (x: number, y: number) =>
      [CAPILLARY, plan.lymph, ...[...plan.initial, ...plan.buds].map(({ line }) => line)].some((line) =>
        line.x.some((each, i) => Math.hypot(each - x, line.y[i]! - y) < 190),
      );
    for (let x = 20; x < WIDTH; x += 60)
      for (let y = 20; y < height; y += 60)
        if (!nearVessel(x, y))
          expect(
            Math.min(...plan.cells.map(({ at }) => Math.hypot(at[0] - x, at[1] - y))),
            `${x} ${y}`,
          ).toBeLessThan(150);
    expect(new Set(plan.cells.map(({ kind }) => kind)).size).toBe(2);
    /** Whether a place lies within a cell. */
    const within = ({ at, half, turn }: Cell, [x, y]: readonly [number, number]) => {
      const [dx, dy] = [x - at[0], y - at[1]];
      const [u, v] = [dx * Math.cos(turn) + dy * Math.sin(turn), dy * Math.cos(turn) - dx * Math.sin(turn)];
      return Math.hypot(u / half[0], v / half[1]) < 1;
    };
    for (const cell of plan.cells)
      for (let k = 0; k < 24; k++) {
        const [u, v] = [cell.half[0] * Math.cos(k), cell.half[1] * Math.sin(k)];
        const edge = [
          cell.at[0] + u * Math.cos(cell.turn) - v * Math.sin(cell.turn),
          cell.at[1] + u * Math.sin(cell.turn) + v * Math.cos(cell.turn),
        ] as const;
        for (const other of plan.cells) if (other !== cell) expect(within(other, edge)).toBe(false);
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
  expect(tissuePlan(300).height).toBe(880);
  expect(tissuePlan(3000).height).toBe(1240);
});
