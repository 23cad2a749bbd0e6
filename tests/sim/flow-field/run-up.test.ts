import { expect, test } from "vitest";
import { buildField } from "../../../src/sim/flow-field/index.ts";
import { crossing } from "./planes.ts";

const fluid = { density: 1060, viscosity: 3.3 };
const wave = (mean: number) =>
  Float32Array.from({ length: 32 }, (_, n) => mean * (1 + 0.3 * Math.sin((n * Math.PI) / 16)));
const drive = {
  period: 0.8,
  inflow: { lower: wave(20), upper: wave(10) },
  split: { left: 0.5, right: 0.5 },
  outflow: {},
};
const fastest = (values: Float32Array) => Math.max(...values.map(Math.abs));

/** The flow at the moment when a field with this run-up gets its first boundary conditions. */
function begun(runUp?: number) {
  const field = buildField(crossing(), fluid, {
    cellsAcross: 8,
    depth: "round",
    ...(runUp ? { runUp } : {}),
  });
  field.setBoundary(drive);
  return field;
}

test("what is read before it is known what flows in does not end the run-up", () => {
  const field = buildField(crossing(), fluid, { cellsAcross: 8, depth: "round", runUp: 0.8 });
  expect(fastest(field.read().u)).toBe(0);
  field.setBoundary(drive);
  expect(field.read().v).toEqual(begun(0.8).read().v);
});

test("what was laid before the boundary conditions flows as what is laid with them, be the openings given otherwise", () => {
  const field = buildField(crossing(), fluid, { cellsAcross: 8, depth: "round", runUp: 0.8 });
  field.prepare();
  field.setBoundary(drive);
  expect(field.read().v).toEqual(begun(0.8).read().v);
  const backward = {
    ...drive,
    inflow: { left: wave(20), right: wave(10) },
    split: { lower: 0.5, upper: 0.5 },
  };
  const [early, late] = [false, true].map((waits) => {
    const other = buildField(crossing(), fluid, { cellsAcross: 8, depth: "round", runUp: 0.8 });
    if (!waits) other.prepare();
    other.setBoundary(backward);
    return other.read().u;
  });
  expect(fastest(late!)).toBeGreaterThan(0.01);
  expect(early).toEqual(late);
});

test("with a run-up a field begins with flow that has run for a while, at its own time 0; without, at rest", () => {
  const field = begun(0.8);
  const first = field.read();
  expect(first.time).toBe(0);
  expect(fastest(begun().read().u)).toBe(0);
  field.advanceSeconds(2 * drive.period);
  const later = field.read();
  // A whole number of periods on: what refines in place stays near the coarse answer.
  expect(fastest(first.u)).toBeGreaterThan(0.8 * fastest(later.u));
  expect(fastest(first.u)).toBeLessThan(1.25 * fastest(later.u));
  expect(Math.abs(later.readings.auditPercent)).toBeLessThan(10);
  expect(begun(0.8).read().v).toEqual(first.v);
}, 60_000);
