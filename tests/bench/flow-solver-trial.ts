/** One flow solver with walls, depth and openings, and how fast bare sweeps run over it: the same in Node and in a browser. */
import { flowUnit } from "../../src/sim/flow-field/measure.ts";
import { buildMesh } from "../../src/sim/flow-solver/cut-cell-mesh.ts";
import { vectorEngine } from "../../src/sim/flow-solver/engine.ts";
import { buildFlowSolver, type Engine, plainEngine } from "../../src/sim/flow-solver/flow-solver.ts";
import { holdFlow } from "../../src/sim/flow-solver/openings.ts";
import { crossing } from "../sim/flow-field/planes.ts";

/** Sweeps timed together, and how often: the fastest counts, so that other work on the machine does not. */
export const SLICE = 20;
export const SLICES = 60;

const geometry = crossing();
const choice = { dx: 0.42, depth: "round" as const };
export const mesh = buildMesh(geometry, choice);

export function lay(engine: Engine) {
  const rules = geometry.openings.map(({ velocity }) => (velocity === undefined ? "pressure" : "velocity"));
  const solver = buildFlowSolver(
    { geometry, mesh, choice, rules },
    { kinematicViscosity: 3.3e-6 },
    0.4,
    engine,
  );
  for (const opening of solver.openings)
    if (opening.rule === "velocity") holdFlow(opening, 2e-5 / flowUnit(solver), solver.arrays);
  solver.advance(200);
  return solver;
}

/** Cells that a sweep visits. */
export const visited = ({ spans }: ReturnType<typeof lay>): number =>
  spans.reduce((sum, edge, n) => sum + (n % 2 === 0 ? -edge : edge), 0);

/** Cell updates a second of bare sweeps, openings left as they stand. `now` in ms. */
function rate(make: (count: number) => Engine, now: () => number): number {
  const engine = make(mesh.nx * mesh.ny);
  const solver = lay(engine);
  const a = solver.arrays;
  let least = Infinity;
  for (let slice = 0; slice < SLICES; slice++) {
    const began = now();
    for (let n = 0; n < SLICE; n++) {
      engine.timeStep(mesh.nx, mesh.ny, solver.spans, a, solver.settings);
      [a.uAhead, a.uNext] = [a.uNext, a.uAhead];
      [a.vAhead, a.vNext] = [a.vNext, a.vAhead];
    }
    least = Math.min(least, now() - began);
  }
  return (1e3 * visited(solver) * SLICE) / least;
}

export const vectorRate = (now: () => number): number => rate(vectorEngine, now);
export const plainRate = (now: () => number): number => rate(plainEngine, now);

/** Bytes a second that a plain copy reads and writes, in arrays of the solver's whole size. */
export function copyBandwidth(now: () => number): number {
  const count = mesh.nx * mesh.ny * 12;
  const [from, to] = [new Float64Array(count).fill(1), new Float64Array(count)];
  let least = Infinity;
  for (let n = 0; n < SLICES; n++) {
    const began = now();
    for (let turn = 0; turn < 4; turn++) to.set(from);
    least = Math.min(least, now() - began);
  }
  return (1e3 * 4 * 16 * count) / least;
}
