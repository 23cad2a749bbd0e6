import { describe, expect, test } from "vitest";
import { VALIDATION_PLANES } from "../../../src/cli/validation/field-planes.ts";
import { balance, openingReading } from "../../../src/sim/flow-field/readings.ts";
import { settle } from "../../../src/sim/flow-field/steady-state.ts";
import type { FlowGeometry } from "../../../src/sim/geometry/geometry.ts";

const [density, viscosity] = [1060, 3.5e-3];

function solve(geometry: FlowGeometry, across: number, depth: "uniform" | "round", narrowest: number) {
  const choice = { dx: narrowest / across, depth, maxSeconds: 20, tolerance: 1e-5, maxUpdates: 1e9 };
  const { solver, moment, steady } = settle({ geometry, density, viscosity, cellsAcross: across }, choice);
  const openings = moment.openings.map((mean, n) =>
    openingReading(solver, mean, geometry.openings[n]!.width, density, viscosity),
  );
  return { openings, steady, ...balance(moment.openings, moment.dissipation) };
}

/** Invented planes whose narrowest tube is 10 mm wide. */
const offAxis: FlowGeometry = {
  open: [
    { tube: { points: [[-30, 0] as const, [0, 0] as const], width: 10 } },
    { tube: { points: [[0, 4] as const, [40, 4] as const], width: 12 } },
  ],
  solid: [],
  openings: [
    { name: "in", centre: [-30, 0], normal: [-1, 0], width: 10, velocity: 0.08 },
    { name: "out", centre: [40, 4], normal: [1, 0], width: 12, pressure: 0 },
  ],
};
const tee: FlowGeometry = {
  open: [
    { tube: { points: [[0, -30] as const, [0, 0] as const], width: 12 } },
    { tube: { points: [[-30, 0] as const, [40, 0] as const], width: 10 } },
  ],
  solid: [],
  openings: [
    { name: "in", centre: [0, -30], normal: [0, -1], width: 12, velocity: 0.06 },
    { name: "left", centre: [-30, 0], normal: [-1, 0], width: 10, pressure: 0 },
    { name: "right", centre: [40, 0], normal: [1, 0], width: 10, pressure: 0 },
  ],
};
const rounded: FlowGeometry = {
  open: [
    { tube: { points: [[-30, 0] as const, [0, 0] as const, [0, 30] as const], width: 10 } },
    { disc: { centre: [-1, 1], radius: 7 } },
  ],
  solid: [],
  openings: [
    { name: "in", centre: [-30, 0], normal: [-1, 0], width: 10, velocity: 0.08 },
    { name: "out", centre: [0, 30], normal: [0, 1], width: 10, pressure: 0 },
  ],
};

const sharp = (name: string) => VALIDATION_PLANES.find((plane) => plane.name.startsWith(name))!;

describe("Twice as many cells change little", () => {
  test.each([
    ["off-axis tubes", offAxis, "uniform", 10],
    ["off-axis tubes", offAxis, "round", 10],
    ["a tee", tee, "round", 10],
    ["rounded corner", rounded, "round", 10],
    ["a polygon's sharp step", sharp("sharp step").geometry, "round", sharp("sharp step").narrowest],
    [
      "a polygon's right angle",
      sharp("sharp right angle").geometry,
      "round",
      sharp("sharp right angle").narrowest,
    ],
  ] as const)(
    "%s (%#): 10 cells lie within 5 % of 20 in pressure and loss, 2 % in flows; the audit of 20 closes within 3 %",
    (_, geometry, depth, narrowest) => {
      const coarse = solve(geometry, 10, depth, narrowest);
      const fine = solve(geometry, 20, depth, narrowest);
      expect(fine.steady).toBe(true);
      expect(Math.abs(fine.auditPercent)).toBeLessThan(3);
      geometry.openings.forEach(({ pressure }, n) => {
        if (pressure !== undefined) expect(fine.openings[n]!.pressure).toBeCloseTo(pressure, 4);
      });
      expect(Math.abs(coarse.powerLoss / fine.powerLoss - 1)).toBeLessThan(0.05);
      const head = fine.openings[0]!.totalPressure - fine.openings[1]!.totalPressure;
      const inflow = fine.openings[0]!.flow;
      fine.openings.forEach(({ flow, totalPressure }, n) => {
        expect(Math.abs(coarse.openings[n]!.flow - flow) / inflow).toBeLessThan(0.02);
        expect(Math.abs(coarse.openings[n]!.totalPressure - totalPressure) / head).toBeLessThan(0.05);
      });
    },
    120_000,
  );
});
