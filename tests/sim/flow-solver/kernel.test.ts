import { execFileSync } from "node:child_process";
import { expect, test } from "vitest";
import { flowUnit } from "../../../src/sim/flow-field/measure.ts";
import { buildMesh } from "../../../src/sim/flow-solver/cut-cell-mesh.ts";
import { hasVectors, vectorEngine } from "../../../src/sim/flow-solver/engine.ts";
import { buildFlowSolver, type Engine, plainEngine } from "../../../src/sim/flow-solver/flow-solver.ts";
import { KERNEL_WASM } from "../../../src/sim/flow-solver/kernel.wasm.ts";
import { holdFlow } from "../../../src/sim/flow-solver/openings.ts";
import { crossing } from "../flow-field/planes.ts";

test("The committed kernel is what its source compiles to", () => {
  const fresh = execFileSync("node", ["scripts/kernel.mjs", "--print"], { encoding: "utf8" });
  expect(KERNEL_WASM).toBe(fresh);
}, 60_000);

test("Node has vectors, so the tests run what most readers run", () => {
  expect(hasVectors()).toBe(true);
});

test("The vector kernel and the plain time step agree to rounding, walls, depth and openings included", () => {
  const choice = { dx: 1, depth: "round" as const };
  const geometry = crossing();
  const mesh = buildMesh(geometry, choice);
  const rules = geometry.openings.map(({ velocity }) => (velocity === undefined ? "pressure" : "velocity"));
  const run = (engine: Engine) => {
    const solver = buildFlowSolver(
      { geometry, mesh, choice, rules },
      { kinematicViscosity: 3.3e-6 },
      0.4,
      engine,
    );
    solver.openings.forEach((opening) => {
      if (opening.rule === "velocity") holdFlow(opening, 2e-5 / flowUnit(solver), solver.arrays);
    });
    solver.advance(500);
    return solver.arrays;
  };
  const plain = run(plainEngine(mesh.nx * mesh.ny));
  const vector = run(vectorEngine(mesh.nx * mesh.ny));
  for (const name of ["u", "v", "p"] as const) {
    expect(Math.max(...plain[name].map(Math.abs))).toBeGreaterThan(0.01);
    plain[name].forEach((value, k) => {
      if (Math.abs(value - vector[name][k]!) > 1e-12) expect(vector[name][k], `${name} ${k}`).toBe(value);
    });
  }
});
