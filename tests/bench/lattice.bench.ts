/**
 * Cell updates a second: vector kernel, plain sweep, the same step in C at the same vector width and with all the machine has, and what
 * the memory would allow. One table, one run, processor time only (other work on the machine counts little).
 * Run: npx tsx tests/bench/lattice.bench.ts
 */
import { execFileSync } from "node:child_process";
import { mkdtempSync, readFileSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { flowUnit } from "../../src/sim/field/measure.ts";
import { vectorEngine } from "../../src/sim/lattice/engine.ts";
import { type Engine, layLattice, plainEngine } from "../../src/sim/lattice/lattice.ts";
import { ARRAYS } from "../../src/sim/lattice/layout.ts";
import { holdFlow } from "../../src/sim/lattice/openings.ts";
import { rasterise } from "../../src/sim/lattice/raster.ts";
import { crossing } from "../sim/field/planes.ts";

const STEPS = 1500;
const geometry = crossing();
const choice = { cell: 0.42, depth: "round" as const };
const raster = rasterise(geometry, choice);
const rules = geometry.openings.map(({ velocity }) => (velocity === undefined ? "pressure" : "velocity"));

function lay(engine: Engine) {
  const lattice = layLattice(geometry, raster, choice, rules, { kinematicViscosity: 3.3e-6 }, 0.4, engine);
  for (const opening of lattice.openings)
    if (opening.rule === "velocity") holdFlow(opening, 2e-5 / flowUnit(lattice), lattice.arrays);
  lattice.advance(200);
  return lattice;
}

/** Processor seconds of `steps` bare sweeps, openings left as they stand. */
function seconds(
  make: (count: number) => Engine,
  steps: number,
): { seconds: number; cells: number; visited: number } {
  const engine = make(raster.nx * raster.ny);
  const lattice = lay(engine);
  const a = lattice.arrays;
  const began = process.cpuUsage();
  for (let n = 0; n < steps; n++) {
    engine.sweep(raster.nx, raster.ny, lattice.spans, a, lattice.settings);
    [a.uAhead, a.uNext] = [a.uNext, a.uAhead];
    [a.vAhead, a.vNext] = [a.vNext, a.vAhead];
  }
  const visited = lattice.spans.reduce((sum, edge, n) => sum + (n % 2 === 0 ? -edge : edge), 0);
  return { seconds: process.cpuUsage(began).user / 1e6, cells: lattice.cells, visited };
}

function inC(flags: readonly string[]): number | undefined {
  const folder = mkdtempSync(join(tmpdir(), "lattice-"));
  try {
    execFileSync("gcc", [...flags, "-o", join(folder, "sweep"), "tests/bench/lattice-sweep.c", "-lm"], {
      stdio: "pipe",
    });
  } catch {
    return undefined;
  }
  const lattice = lay(plainEngine(raster.nx * raster.ny));
  const s = lattice.settings;
  const head = Float64Array.of(
    raster.nx,
    raster.ny,
    STEPS,
    s.stepOverCell,
    s.viscosityOverCell,
    s.soundSquared,
    s.soundDamping,
    s.upstream,
  );
  const file = join(folder, "state");
  writeFileSync(
    file,
    Buffer.concat(
      [head, lattice.spans, ...ARRAYS.map((name) => lattice.arrays[name])].map((array) =>
        Buffer.from(array.buffer, array.byteOffset, array.byteLength),
      ),
    ),
  );
  const taken = Number(execFileSync(join(folder, "sweep"), [file], { encoding: "utf8" }));
  const u = new Float64Array(readFileSync(file).buffer.slice(0));
  if (!u.every(Number.isFinite)) throw new Error("the step in C did not stay finite");
  return taken;
}

/** Bytes a second of a plain copy in arrays of the lattice's size. */
function copyBandwidth(): number {
  const count = raster.nx * raster.ny * 4;
  const [from, to] = [new Float64Array(count).fill(1), new Float64Array(count)];
  const began = process.cpuUsage();
  const turns = 400;
  for (let n = 0; n < turns; n++) to.set(from);
  return (16 * count * turns) / (process.cpuUsage(began).user / 1e6);
}

const vector = seconds(vectorEngine, STEPS);
const plain = seconds(plainEngine, STEPS / 5);
const updates = vector.visited * STEPS;
const rows: [string, number | undefined][] = [
  ["vector kernel (2 doubles wide), Node", updates / vector.seconds],
  ["plain sweep, Node", updates / 5 / plain.seconds],
  ...(
    [
      ["C, gcc -O3 (2 doubles wide)", ["-O3"]],
      ["C, gcc -O3 -march=native -ffast-math", ["-O3", "-march=native", "-ffast-math"]],
    ] as const
  ).map(([name, flags]): [string, number | undefined] => {
    const taken = inC(flags);
    return [name, taken === undefined ? undefined : updates / taken];
  }),
  // Each visit reads 24 numbers and writes 6.
  ["memory's limit at 240 bytes a cell, from a measured copy", copyBandwidth() / 240],
];
console.log(
  `${raster.nx} x ${raster.ny} cells, ${vector.visited} visited (${vector.cells} in the blood), ${STEPS} steps`,
);
for (const [name, rate] of rows)
  console.log(
    `${name.padEnd(58)} ${rate === undefined ? "no compiler" : `${(rate / 1e6).toFixed(1).padStart(7)} M/s  ${(rate / (updates / vector.seconds)).toFixed(2)}`}`,
  );
