import { describe, expect, test } from "vitest";
import { balance, openingReading } from "../../../src/sim/flow-field/readings.ts";
import { settle } from "../../../src/sim/flow-field/steady-state.ts";
import type { FlowGeometry } from "../../../src/sim/geometry/geometry.ts";
import { toMmHg } from "../../../src/sim/units.ts";
import { tube } from "./planes.ts";

const density = 1060;
const viscosity = 3.5e-3;

function solve(geometry: FlowGeometry, across: number, depth: "uniform" | "round", width = 10) {
  const choice = { dx: width / across, depth, maxSeconds: 20, tolerance: 1e-5, maxUpdates: 1e9 };
  const { solver, moment, steady } = settle({ geometry, density, viscosity, cellsAcross: across }, choice);
  const openings = moment.openings.map((mean, n) =>
    openingReading(solver, mean, geometry.openings[n]!.width, density, viscosity),
  );
  return { openings, steady, ...balance(moment.openings, moment.dissipation) };
}

const between = ({ openings }: ReturnType<typeof solve>) =>
  openings[0]!.totalPressure - openings[1]!.totalPressure;

describe("Developed flow in a straight tube", () => {
  // Hagen-Poiseuille: 32 mu U L / D2 in a round tube; between plates 12 mu U L / H2.
  const [U, L, D] = [0.05, 0.04, 0.01];
  test.each([0, 17, 45])(
    "round, tilted by %i degrees: the drop is Hagen and Poiseuille's within three percent",
    (degrees) => {
      const exact = toMmHg((32 * viscosity * U * L) / D ** 2);
      const solved = solve(tube(degrees, 10, 40, U), 16, "round");
      expect(solved.steady).toBe(true);
      expect(Math.abs(between(solved) / exact - 1)).toBeLessThan(0.03);
      expect(Math.abs(solved.auditPercent)).toBeLessThan(3);
      expect(Math.abs(solved.massBalancePercent)).toBeLessThan(0.01);
      expect(solved.openings[0]!.flow).toBeCloseTo(U * (Math.PI / 4) * 100, 3);
    },
    60_000,
  );
  test("slanted between plates: the error falls with the square of the cell width", () => {
    const exact = toMmHg((12 * viscosity * U * L) / D ** 2);
    const errors = [8, 16].map((across) =>
      Math.abs(between(solve(tube(20, 10, 40, U), across, "uniform")) / exact - 1),
    );
    expect(errors[1]!).toBeLessThan(0.02);
    expect(Math.log2(errors[0]! / errors[1]!)).toBeGreaterThan(1.5);
  }, 60_000);
});
