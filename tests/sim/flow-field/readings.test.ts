import { expect, test } from "vitest";
import { boundaryConditions } from "../../../src/chain/field-boundary.ts";
import { fluidOf } from "../../../src/chain/fluid.ts";
import { solve } from "../../../src/sim/circulation/solve.ts";
import type { BoundaryConditions, FieldReadings } from "../../../src/sim/flow-field/flow-field.ts";
import { buildField } from "../../../src/sim/flow-field/index.ts";
import { trackPassage } from "../../../src/sim/flow-field/parcel-passage.ts";
import { flowShares } from "../../../src/sim/flow-field/pathlines.ts";
import { type Period, settledPeriods, sharesOf } from "../../../src/sim/flow-field/periods.ts";
import { settle } from "../../../src/sim/flow-field/steady-state.ts";
import { pathwayGeometry } from "../../../src/sim/geometry/pathways/index.ts";
import { PATHWAY_STAGES } from "../../../src/sim/parameters/request.ts";
import { START } from "../../../src/state/scene-state.ts";
import { crossing } from "./planes.ts";

const fluid = { density: 1060, viscosity: 3.5 };

/** Asked for by LUNGWARD_LONG=1: the page's own grid and all three pathways, whose figures docs/model-field.md tells. */
const long = process.env.LUNGWARD_LONG === "1";

/** mmHg of total pressure from the lower vein to the left lung's opening. */
function fall({ openings }: FieldReadings): number {
  const total = (name: string) => openings.find((opening) => opening.name === name)!.totalPressure;
  return total("ivc") - total("left");
}

test.each(long ? PATHWAY_STAGES : (["atriopulmonary", "lateral-tunnel"] as const))(
  "%s: blood that breathes and beats settles, its energy budget closes within 7 %, and its readings then stand",
  (stage) => {
    // A chamber that contracts drives blood to and fro, and a plane with rigid walls cannot follow: its budget stays open (docs/model-field.md).
    const set = stage === "atriopulmonary" ? { rhythm: "no-atrial-contraction" } : {};
    const request = { ...START.request, stage, set: { ...START.request.set, ...set } };
    const circulation = solve(request);
    const field = buildField(pathwayGeometry(request)!, fluidOf(request), {
      cellsAcross: long ? 12 : 8,
      depth: "round",
    });
    const boundary = boundaryConditions(circulation, circulation, false);
    field.setBoundary(boundary);
    let periods = 0;
    for (; periods < 6 && !field.read().readings.settled; periods++) field.advanceSeconds(boundary.period);
    const first = field.read().readings;
    expect(first.settled, `after ${periods} repeats`).toBe(true);
    expect(Math.abs(first.auditPercent)).toBeLessThan(7);
    expect(Math.abs(first.massBalancePercent)).toBeLessThan(0.2);
    field.advanceSeconds(1.1 * boundary.period);
    const later = field.read().readings;
    expect(later.settled).toBe(true);
    expect(Math.abs(later.powerLoss / first.powerLoss - 1)).toBeLessThan(0.01);
    expect(Math.abs(fall(later) / fall(first) - 1)).toBeLessThan(0.01);
    expect(Math.abs(later.shares.ivc!.left! - first.shares.ivc!.left!)).toBeLessThan(0.05);
    if (!long) return;
    console.log(stage, { periods, auditPercent: later.auditPercent });
    expect(periods).toBe(3);
    expect(Math.abs(later.auditPercent)).toBeLessThan(4);
  },
  120_000,
);

test("parcels that travel with a steady flow go where its lines go, and in the openings' proportion", () => {
  const { solver } = settle(
    { geometry: crossing(), density: fluid.density, viscosity: fluid.viscosity * 1e-3, cellsAcross: 10 },
    {
      dx: 1.2,
      depth: "uniform",
      maxSeconds: 10,
      tolerance: 1e-4,
      maxUpdates: 1e8,
    },
  );
  const passage = trackPassage(solver);
  for (let n = 0; n < 400; n++) passage.advance(0.005, 0.5);
  passage.taken();
  for (let n = 0; n < 600; n++) passage.advance(0.005, 0.5);
  const passed = passage.taken();
  const lines = flowShares(solver, 400);
  const shares = sharesOf(passed);
  for (const from of ["lower", "upper"]) {
    for (const to of ["left", "right"]) {
      expect(Math.abs((shares[from]![to] ?? 0) - (lines[from]![to] ?? 0)), `${from} to ${to}`).toBeLessThan(
        0.03,
      );
    }
  }
  const count = (from: string) => Object.values(passed[from]!).reduce((sum, n) => sum + n, 0);
  // Both veins run at 0.1 m/s: as their widths, 18 and 12 mm.
  expect(count("lower") / count("upper")).toBeCloseTo(18 / 12, 1);
});

const period = (kinetic: number, power: number): Period => ({
  openings: [
    { flow: 1, pressure: 1, power, motion: 0 },
    { flow: -1, pressure: 0, power: 0, motion: 0 },
  ],
  dissipation: power,
  kinetic,
  eddies: 0,
  passed: {},
});

test("A flow that repeats is settled at its second like period; one that drifts is not; one that wanders about a mean is, later", () => {
  const run = (kinds: readonly Period[], known = true): number => {
    let periods: readonly Period[] = [];
    let settled = false;
    for (let n = 0; n < kinds.length; n++) {
      ({ periods, settled } = settledPeriods([...periods, kinds[n]!], settled, known));
      if (settled) return n + 1;
    }
    return Number.POSITIVE_INFINITY;
  };
  expect(run([period(1, 1), period(2, 2), period(2.001, 2.01)])).toBe(3);
  expect(run([period(2, 2), period(2, 2), period(2, 2)], false)).toBe(Infinity);
  expect(run(Array.from({ length: 30 }, (_, n) => period(1.05 ** n, 1.05 ** n)))).toBe(Infinity);
  const wandering = Array.from({ length: 30 }, (_, n) => period(1 + 0.03 * (-1) ** n, 2 + 0.1 * (-1) ** n));
  const at = run(wandering);
  expect(at).toBeGreaterThan(6);
  expect(at).toBeLessThan(12);
});

/** mL/s from below, 6 from above, shared evenly. */
const even = (period: number, lower: number): BoundaryConditions => ({
  period,
  inflow: { lower: Float32Array.of(lower), upper: Float32Array.of(6) },
  split: { left: 0.5, right: 0.5 },
  outflow: {},
});

test("Inflow is read at once, not only after a whole cycle: tracers enter by it", () => {
  const field = buildField(crossing(), fluid, { cellsAcross: 6, depth: "round" });
  field.setBoundary(even(2.4, 12));
  field.advanceSeconds(0.05);
  const flows = field.read().readings.openings.map(({ name, flow }) => [name, flow] as const);
  expect(Object.fromEntries(flows).lower).toBeCloseTo(12, 0);
  expect(Object.fromEntries(flows).upper).toBeCloseTo(6, 0);
});

test("Once settled a flow stays so until its drive or walls change", () => {
  const field = buildField(crossing(), fluid, { cellsAcross: 6, depth: "round" });
  field.setBoundary(even(0.4, 12));
  for (let n = 0; n < 40 && !field.read().readings.settled; n++) field.advanceSeconds(0.4);
  expect(field.read().readings.settled).toBe(true);
  field.advanceSeconds(2);
  expect(field.read().readings.settled).toBe(true);
  field.setBoundary(even(0.4, 18));
  expect(field.read().readings.settled).toBe(false);
}, 60_000);
