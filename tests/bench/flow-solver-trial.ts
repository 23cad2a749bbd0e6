/** One flow solver with walls, depth and openings, and how fast bare sweeps run over it: the same in Node and in a browser. */
import { flowUnit } from "../../src/sim/flow-field/solver-units.ts";
import { buildMesh } from "../../src/sim/flow-solver/cut-cell-mesh.ts";
import { vectorEngine } from "../../src/sim/flow-solver/engine.ts";
import { buildFlowSolver, type Engine, plainEngine } from "../../src/sim/flow-solver/flow-solver.ts";
import { holdFlow } from "../../src/sim/flow-solver/openings.ts";
import { crossing } from "../sim/flow-field/planes.ts";
import { earlierEngine } from "./earlier-kernel.ts";

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

/** Engines that are compared, by what they are called in the table. */
const ENGINES = {
  earlier: earlierEngine,
  singles: (count: number) => vectorEngine(count, "singles"),
  doubles: (count: number) => vectorEngine(count, "doubles"),
  plain: plainEngine,
};

/** Cell updates a second of bare sweeps, openings left as they stand; the engines take turns. `now` in ms. */
export function rates(now: () => number): Record<keyof typeof ENGINES, number> {
  const names = Object.keys(ENGINES) as (keyof typeof ENGINES)[];
  const runs = names.map((name) => {
    const engine = ENGINES[name](mesh.nx * mesh.ny);
    return { name, engine, solver: lay(engine), least: Infinity };
  });
  for (let slice = 0; slice < SLICES; slice++)
    for (const run of runs) run.least = Math.min(run.least, sliceTime(run, now));
  return Object.fromEntries(
    runs.map(({ name, solver, least }) => [name, (1e3 * visited(solver) * SLICE) / least]),
  ) as Record<keyof typeof ENGINES, number>;
}

/** ms for one slice. */
function sliceTime(
  { engine, solver }: { engine: Engine; solver: ReturnType<typeof lay> },
  now: () => number,
) {
  const a = solver.arrays;
  const began = now();
  for (let n = 0; n < SLICE; n++) {
    engine.timeStep(mesh, solver.spans, a, solver.settings, 0);
    [a.uAhead, a.uNext] = [a.uNext, a.uAhead];
    [a.vAhead, a.vNext] = [a.vNext, a.vAhead];
  }
  return now() - began;
}

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
