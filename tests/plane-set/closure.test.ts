import { describe, expect, test } from "vitest";
import { atCells } from "../../scripts/plane-set/at-cells.ts";
import { fittedCases, isHeldOut } from "../../scripts/plane-set/cases.ts";
import { applyClosure, type Closure, OFF } from "../../scripts/plane-set/closure.ts";
import { missOf } from "../../scripts/plane-set/judge.ts";
import { runCase } from "../../scripts/plane-set/run-case.ts";
import { applyGiven, openingRule } from "../../src/sim/flow-field/boundary-conditions.ts";
import { gauge } from "../../src/sim/flow-field/measure.ts";
import { buildMesh } from "../../src/sim/flow-solver/cut-cell-mesh.ts";
import { chooseEngine } from "../../src/sim/flow-solver/engine.ts";
import { buildFlowSolver } from "../../src/sim/flow-solver/flow-solver.ts";
import { tube } from "../sim/flow-field/planes.ts";

const ON: Closure = { ...OFF, turn: 0.6 };

/** What a straight round tube of 10 mm and 40 mm length loses between its ends, over Hagen and Poiseuille's. */
function tubeDrop(closure: Closure): number {
  const [density, viscosity, width, length, speed] = [1060, 0.0035, 10, 40, 0.05];
  const geometry = tube(17, width, length, speed);
  const choice = { dx: width / 16, depth: "round" } as const;
  const mesh = buildMesh(geometry, choice);
  const rules = geometry.openings.map((opening) => openingRule(opening, undefined));
  const solver = buildFlowSolver(
    { geometry, mesh, choice, rules },
    { kinematicViscosity: viscosity / density, soundSpeedRatio: 2 },
    2 * speed,
    chooseEngine(mesh.nx * mesh.ny, "doubles"),
  );
  applyGiven(solver, density);
  const here = atCells(solver);
  const close = applyClosure(solver, here, closure);
  while (solver.time < 10) {
    solver.advance(10);
    here.look();
    close();
  }
  const [from, to] = gauge(solver, density, viscosity)().openings;
  const exact = (32 * viscosity * speed * length * 1e-3) / (width * 1e-3) ** 2;
  return (from!.pressure - to!.pressure) / exact;
}

describe("the plane's closure", () => {
  test("leaves a developed tube as Hagen and Poiseuille have it", () => {
    const off = tubeDrop(OFF);
    const on = tubeDrop(ON);
    expect(Math.abs(off - 1)).toBeLessThan(0.02);
    expect(Math.abs(on - 1)).toBeLessThan(0.02);
  });

  test("brings the power of streams that meet nearer to three dimensions, and mixing takes blood of each vein to both lungs", () => {
    const place = fittedCases().findIndex(({ stored }) => stored.name === "lt-centre");
    const one = fittedCases()[place]!;
    expect(typeof isHeldOut(place)).toBe("boolean");
    const mixings = [
      { by: "bending", part: 0 },
      { by: "bending", part: 0.2 },
    ] as const;
    const off = runCase(one, OFF, mixings, 6);
    const on = runCase(one, ON, [], 6);
    expect(Math.abs(missOf(one, on).power)).toBeLessThan(0.6 * Math.abs(missOf(one, off).power));
    const [apart, mixed] = off.mixed;
    expect(mixed!.svc).toBeGreaterThan(apart!.svc + 0.02);
    expect(mixed!.ivc).toBeLessThan(apart!.ivc);
    expect(Math.abs(apart!.ivc - off.parcels.ivc)).toBeLessThan(0.05);
  }, 120_000);
});
