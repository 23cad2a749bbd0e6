import { execFileSync } from "node:child_process";
import { expect, test } from "vitest";
import { flowUnit } from "../../../src/sim/field/measure.ts";
import { hasVectors, vectorEngine } from "../../../src/sim/lattice/engine.ts";
import { KERNEL_WASM } from "../../../src/sim/lattice/kernel.wasm.ts";
import { type Engine, layLattice, plainEngine } from "../../../src/sim/lattice/lattice.ts";
import { holdFlow } from "../../../src/sim/lattice/openings.ts";
import { rasterise } from "../../../src/sim/lattice/raster.ts";
import { crossing } from "../field/planes.ts";

test("The committed kernel is what its source compiles to", () => {
  const fresh = execFileSync("node", ["scripts/kernel.mjs", "--print"], { encoding: "utf8" });
  expect(KERNEL_WASM).toBe(fresh);
}, 60_000);

test("Node has vectors, so the tests run what most readers run", () => {
  expect(hasVectors()).toBe(true);
});

test("The vector kernel and the plain sweep agree to rounding, walls, depth and openings included", () => {
  const choice = { cell: 1, depth: "round" as const };
  const geometry = crossing();
  const raster = rasterise(geometry, choice);
  const rules = geometry.openings.map(({ velocity }) => (velocity === undefined ? "pressure" : "velocity"));
  const run = (engine: Engine) => {
    const lattice = layLattice(
      { geometry, raster, choice, rules },
      { kinematicViscosity: 3.3e-6 },
      0.4,
      engine,
    );
    lattice.openings.forEach((opening) => {
      if (opening.rule === "velocity") holdFlow(opening, 2e-5 / flowUnit(lattice), lattice.arrays);
    });
    lattice.advance(500);
    return lattice.arrays;
  };
  const plain = run(plainEngine(raster.nx * raster.ny));
  const vector = run(vectorEngine(raster.nx * raster.ny));
  for (const name of ["u", "v", "p"] as const) {
    expect(Math.max(...plain[name].map(Math.abs))).toBeGreaterThan(0.01);
    plain[name].forEach((value, k) => {
      if (Math.abs(value - vector[name][k]!) > 1e-12) expect(vector[name][k], `${name} ${k}`).toBe(value);
    });
  }
});
