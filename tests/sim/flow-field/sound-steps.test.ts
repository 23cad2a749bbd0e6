import { expect, test } from "vitest";
import { buildField } from "../../../src/sim/flow-field/index.ts";
import type { SoundSteps } from "../../../src/sim/flow-solver/flow-solver.ts";
import { crossing } from "./planes.ts";

/** Two veins whose flow breathes, after three breaths. */
function readings(soundSteps: SoundSteps) {
  const field = buildField(
    crossing(),
    { density: 1060, viscosity: 3.3 },
    { cellsAcross: 10, depth: "round", soundSteps },
  );
  field.setBoundary({
    period: 0.8,
    inflow: { lower: Float32Array.of(40, 60, 40, 20), upper: Float32Array.of(20, 20, 30, 30) },
    split: { left: 0.45, right: 0.55 },
    outflow: {},
  });
  const { step } = field;
  field.advanceSeconds(2.41);
  return { step, ...field.read().readings };
}

test("A pulsating flow answers the same with one advection for three steps of sound as with one for each", () => {
  const each = readings(1);
  const shared = readings(3);
  expect(shared.step / each.step).toBeGreaterThan(2.7);
  expect(Math.abs(shared.dissipation / each.dissipation - 1)).toBeLessThan(0.01);
  expect(Math.abs(shared.powerLoss / each.powerLoss - 1)).toBeLessThan(0.01);
  expect(Math.abs(shared.auditPercent)).toBeLessThan(1.02 * Math.abs(each.auditPercent));
  expect(Math.abs(shared.massBalancePercent)).toBeLessThan(0.5);
  shared.openings.forEach(({ flow, totalPressure }, n) => {
    const known = each.openings[n]!;
    expect(Math.abs(flow / known.flow - 1)).toBeLessThan(0.01);
    expect(Math.abs(totalPressure - known.totalPressure)).toBeLessThan(0.01);
  });
});
