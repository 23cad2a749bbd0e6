import { execFileSync } from "node:child_process";
import { describe, expect, test } from "vitest";
import { applyBoundary } from "../../../src/sim/flow-field/boundary-conditions.ts";
import { buildMesh } from "../../../src/sim/flow-solver/cut-cell-mesh.ts";
import { chooseEngine, vectorEngine } from "../../../src/sim/flow-solver/engine.ts";
import { type Engine, plainEngine, type SoundSteps } from "../../../src/sim/flow-solver/flow-solver.ts";
import { KERNEL_WASM } from "../../../src/sim/flow-solver/kernel.wasm.ts";
import { fillCoefficients, rowSpans } from "../../../src/sim/flow-solver/stencil-coefficients.ts";
import { hasVectors } from "../../../src/sim/flow-solver/vector-probe.ts";
import type { FlowGeometry } from "../../../src/sim/geometry/geometry.ts";
import { apart, DRIVE, PLANES, solverIn } from "./planes.ts";

test("The committed kernel is what its source compiles to", () => {
  const fresh = execFileSync("node", ["scripts/kernel.mjs", "--print"], { encoding: "utf8" });
  expect(KERNEL_WASM).toBe(fresh);
}, 60_000);

test("Node has vectors, so the tests run what most readers run", () => {
  expect(hasVectors()).toBe(true);
});

test("a grid too large for the vector kernel's memory gets the plain engine, and asked for by name it is refused", () => {
  const inOneMemory = ({ arrays: { u, v } }: Engine) => u.buffer === v.buffer;
  expect(inOneMemory(chooseEngine(200_000, "doubles"))).toBe(true);
  const plain = chooseEngine(300_000, "doubles");
  expect(inOneMemory(plain)).toBe(false);
  expect(plain.arrays.u).toHaveLength(300_000);
  expect(() => vectorEngine(300_000, "doubles")).toThrow("300000 cells are too many in doubles");
});

/** The flow after 510 steps of sound. */
function flowIn(geometry: FlowGeometry, soundSteps: SoundSteps, engine: (count: number) => Engine) {
  const solver = solverIn(geometry, 1.4, engine, soundSteps);
  solver.advance(510 / soundSteps, (time) => applyBoundary(solver, DRIVE, time));
  return solver.arrays;
}

const TRIALS = PLANES.flatMap(([name, geometry]) =>
  ([1, 3] as const).map((steps) => [name, steps, geometry] as const),
);

describe.each(TRIALS)("%s, steps of sound to a push: %i", (_, soundSteps, geometry) => {
  const plain = flowIn(geometry, soundSteps, plainEngine);

  test("the vector kernel in doubles and the plain time step agree to rounding", () => {
    expect(
      apart(
        plain,
        flowIn(geometry, soundSteps, (count) => vectorEngine(count, "doubles")),
      ),
    ).toBeLessThan(1e-11);
  });

  test("in single precision the flow stays within 2e-5 of the plain time step's", () => {
    const difference = apart(
      plain,
      flowIn(geometry, soundSteps, (count) => vectorEngine(count, "singles")),
    );
    expect(difference).toBeGreaterThan(1e-9);
    expect(difference).toBeLessThan(2e-5);
  });
});

test("In single precision pushes far below a velocity's rounding add up, so that a slow approach to the steady state is not lost", () => {
  const side = 16;
  const corners = [
    [0, 0],
    [side, 0],
    [side, side],
    [0, side],
  ] as const;
  const mesh = buildMesh(
    { open: [{ polygon: { points: corners } }], solid: [], openings: [] },
    { dx: 1, depth: "uniform" },
  );
  const { arrays, timeStep } = vectorEngine(mesh.nx * mesh.ny, "singles");
  fillCoefficients(mesh, [], false, arrays);
  const middle = 10 * mesh.nx + 10;
  arrays.u[middle] = 1;
  // A slope of pressure that stays; nothing else moves.
  for (let k = 0; k < arrays.pAhead.length; k++) arrays.pAhead[k] = -(k % mesh.nx) * 2 ** -27;
  const settings = {
    dtOverDx: 1,
    viscosityOverDx: 0,
    soundSpeedSquared: 0,
    soundSteps: 1,
    soundDamping: 0,
    upstream: 0,
  };
  const pressure = arrays.pAhead.slice();
  const spans = rowSpans(mesh, arrays);
  for (let step = 0; step < 1024; step++) {
    timeStep(mesh, spans, arrays, settings, 0);
    arrays.pAhead.set(pressure);
  }
  expect(Math.fround(1 + 2 ** -27)).toBe(1);
  expect(arrays.u[middle]).toBe(1 + 1024 * 2 ** -27);
});
