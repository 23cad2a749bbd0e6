import { expect, test } from "vitest";
import { accelerate } from "../../../src/sim/flow-field/accelerate.ts";
import { solveCavity } from "../../../src/sim/flow-field/benchmark/cavity.ts";
import type { FlowSolver } from "../../../src/sim/flow-solver/flow-solver.ts";

/** Each number comes nearer to its steady value by its own factor a step; starts `off` away from it. */
function relaxing(steady: readonly number[], factors: readonly number[], off: number) {
  const names = ["u", "v", "p", "uAhead", "vAhead", "uNext", "vNext", "pAhead"] as const;
  const arrays = Object.fromEntries(
    names.map((name) => [name, Float64Array.from(steady, (value) => value + off)]),
  ) as Record<(typeof names)[number], Float64Array>;
  const advance = (steps: number) => {
    for (let n = 0; n < steps; n++)
      for (const each of [arrays.u, arrays.v, arrays.p])
        steady.forEach((value, k) => {
          each[k] = value + factors[k]! * (each[k]! - value);
        });
  };
  return { arrays, advance } as unknown as FlowSolver & { arrays: typeof arrays };
}

const STEADY = [10, -4, 7];
const farthest = ({ arrays: { u, v, p } }: FlowSolver) =>
  Math.max(...[u, v, p].flatMap((each) => STEADY.map((value, k) => Math.abs(each[k]! - value))));

test("as many stretches as there are rates of approach reach the steady flow, however slow they are", () => {
  const solver = relaxing(STEADY, [0.9999, 0.99, 0.9], 1e-2);
  const advance = accelerate(solver);
  for (let n = 0; n < 5; n++) advance(1);
  expect(farthest(solver)).toBeLessThan(1e-5);
  const plain = relaxing(STEADY, [0.9999, 0.99, 0.9], 1e-2);
  plain.advance(5);
  expect(farthest(plain)).toBeGreaterThan(9e-3);
  // What is read half a step ahead is the same flow.
  expect(solver.arrays.uAhead).toEqual(solver.arrays.u);
  expect(solver.arrays.pAhead).toEqual(solver.arrays.p);
});

test("a flow that still finds its shape is left alone, and how far it moved is told", () => {
  const solver = relaxing(STEADY, [0.5, 0.5, 0.5], 3);
  const advance = accelerate(solver);
  const moved = [advance(1), advance(1)];
  expect(farthest(solver)).toBeCloseTo(0.75, 12);
  expect(moved[0]).toBeCloseTo(1.5 / Math.hypot(11.5, 2.5, 8.5) / Math.sqrt(1 / 3), 12);
  expect(moved[1]).toBeLessThan(moved[0]!);
});

test("a cavity at Reynolds number 400 is steady after half the cell updates it takes through time", () => {
  // 3.1e7 through time, to a weaker tolerance.
  const { steady, updates } = solveCavity(400, 48);
  expect(steady).toBe(true);
  expect(updates).toBeLessThan(1.5e7);
}, 60_000);
