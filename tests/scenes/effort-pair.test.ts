import { expect, test, vi } from "vitest";
import type { Frame } from "../../src/chain/frame.ts";
import { planSweep, type Sweep } from "../../src/chain/running-sweep.ts";
import { saturationOf } from "../../src/scenes/circuit/circuit-blood.ts";
import { BELOW_LIVER } from "../../src/scenes/circuit/vessel.ts";
import { flowTrace, meanOf } from "../../src/scenes/drawing/trace-clock.ts";
import { COMPARED, effortOf, pairOf } from "../../src/scenes/exercise/effort-pair.ts";
import { solve } from "../../src/sim/circulation/solve.ts";
import { START } from "../../src/state/scene-state.ts";

vi.mock("pixi.js", () => ({}));

const at = (metabolicEquivalents: number) =>
  solve({ ...START.request, set: { ...START.request.set, metabolicEquivalents } });
const plan = planSweep({ ...START, scene: "exercise" })!;
const answered = (...efforts: readonly number[]): Sweep => ({
  ...plan,
  progress: efforts.length / 16,
  curves: plan.curves.map((curve) => ({
    ...curve,
    points: curve.points.map((point) =>
      curve.name !== "reference" && efforts.includes(point.at)
        ? { ...point, circulation: solve(point.request) }
        : point,
    ),
  })),
});
const pair = (own: number, sweep: Sweep | null) =>
  pairOf({ panes: [{ circulation: at(own) }], sweep } as unknown as Frame).map(effortOf);

test("a body at rest stands beside one at work, and one at work beside itself at rest, the lesser effort first", () => {
  const sweep = answered(1, COMPARED);
  expect(pair(1, sweep)).toEqual([1, COMPARED]);
  expect(pair(3, sweep)).toEqual([1, 3]);
});

test("it stands alone until the other is answered", () => {
  expect(pair(1, null)).toEqual([1]);
  expect(pair(1, answered(1, 8))).toEqual([1]);
  expect(pair(4, answered(8))).toEqual([4]);
});

test("where the body cannot keep up, the greatest effort below stands in once all are answered", () => {
  expect(pair(1, { ...answered(1, 2, 3), progress: 1 })).toEqual([1, 3]);
});

test("between kidneys and liver the vein carries the legs' and the kidneys' blood, and their mixture's oxygen", () => {
  const circulation = at(COMPARED);
  const { traces, extras } = circulation;
  const mean = (name: string) => meanOf(traces, flowTrace(traces.flows, name)!);
  expect(mean(BELOW_LIVER)).toBeGreaterThan(mean("legs"));
  expect(mean(BELOW_LIVER)).toBeLessThan(mean("legs+splanchnic"));
  const saturation = saturationOf(circulation, "belowLiver");
  expect(saturation).toBeGreaterThan(extras.legVeinSaturation!);
  expect(saturation).toBeLessThan(extras.renalVeinSaturation!);
  expect(flowTrace(traces.flows, "legs+nowhere*0.5")).toBeUndefined();
});
