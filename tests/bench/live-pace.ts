/**
 * Seconds of blood that one core computes in a second, over a whole cycle of each pathway at rest: the vector kernel of November 2026 with an advection in
 * each step of sound, today's with the same, and today's with one in every third or fewer. `npx tsx tests/bench/live-pace.ts`, some minutes; `LUNGWARD_CELLS=20`
 * for one grid alone. They take turns in short slices, of which in each twelfth of the repeat the fastest count (the quickest of twelve), so that other work
 * on the machine does not. Readings are left out.
 */
import { boundaryConditions } from "../../src/chain/field-boundary.ts";
import { fluidOf } from "../../src/chain/fluid.ts";
import { RUNGS } from "../../src/chain/grid-ladder.ts";
import { ALONE } from "../../src/chain/pane-set.ts";
import { entryAt } from "../../src/sim/checked/present.ts";
import { solve } from "../../src/sim/circulation/solve.ts";
import { applyBoundary } from "../../src/sim/flow-field/boundary-conditions.ts";
import type { FieldFluid } from "../../src/sim/flow-field/field-session.ts";
import type { BoundaryConditions } from "../../src/sim/flow-field/flow-field.ts";
import { buildField, type FieldSession } from "../../src/sim/flow-field/index.ts";
import { minSoundSpeedOf } from "../../src/sim/flow-field/lay-solver.ts";
import { remap } from "../../src/sim/flow-field/remap.ts";
import { buildFlowSolver } from "../../src/sim/flow-solver/flow-solver.ts";
import type { FlowGeometry } from "../../src/sim/geometry/geometry.ts";
import { pathwayGeometry } from "../../src/sim/geometry/pathways/index.ts";
import { PATHWAY_STAGES } from "../../src/sim/parameters/request.ts";
import { fromMillipascalSecond } from "../../src/sim/units.ts";
import { START } from "../../src/state/scene-state.ts";
import { earlierEngine } from "./earlier-kernel.ts";

const PARTS = 12;
/** ms of a slice */
const SLICE = 4;

type Live = Pick<ReturnType<FieldSession["live"]>, "solver" | "drive">;

/** s of wall clock for a second of blood over the coming `seconds` of blood */
function cost({ solver, drive }: Live, seconds: number): number {
  const costs: number[] = [];
  const until = solver.time + seconds;
  for (let steps = 5; solver.time < until; ) {
    const [began, from] = [performance.now(), solver.time];
    solver.advance(steps, drive);
    const spent = performance.now() - began;
    costs.push(spent / 1000 / (solver.time - from));
    steps = Math.max(3, Math.min(50, Math.round((steps * SLICE) / spent)));
  }
  return entryAt(
    costs.sort((a, b) => a - b),
    Math.floor(costs.length / 12),
  );
}

interface Plane {
  readonly geometry: FlowGeometry;
  readonly boundary: BoundaryConditions;
  readonly fluid: FieldFluid;
}

/** The same flow, computed by the earlier kernel. */
function earlier({ solver: now }: Live, { geometry, boundary, fluid }: Plane): Live {
  const { mesh, choice } = now;
  const [density, viscosity] = [fluid.density, fromMillipascalSecond(fluid.viscosity)];
  const solver = buildFlowSolver(
    { geometry, mesh, choice, rules: now.openings.map(({ rule }) => rule) },
    { kinematicViscosity: viscosity / density, minSoundSpeed: minSoundSpeedOf(mesh) },
    now.fastest,
    earlierEngine(mesh.nx * mesh.ny),
  );
  remap(now, solver);
  return { solver, drive: (time) => applyBoundary(solver, boundary, time) };
}

const CELLS = process.env.LUNGWARD_CELLS ? [Number(process.env.LUNGWARD_CELLS)] : RUNGS;

for (const stage of PATHWAY_STAGES) {
  const request = { ...START.request, stage };
  const circulation = solve(request);
  const fluid = fluidOf(request);
  const geometry = pathwayGeometry(request)!;
  const boundary = boundaryConditions(circulation, circulation, false);
  for (const cellsAcross of CELLS) {
    const live = (soundSteps: 1 | 3): Live => {
      const field = buildField(geometry, fluid, { ...ALONE.lead, soundSteps: 3, depth: "round" });
      field.setBoundary(boundary);
      field.reshape(geometry, { cellsAcross, soundSteps });
      return field.live();
    };
    const [single, shared] = [live(1), live(3)];
    const runs = [earlier(single, { geometry, boundary, fluid }), single, shared];
    const sums = runs.map(() => 0);
    for (let part = 0; part < PARTS; part++)
      runs.forEach((run, n) => {
        sums[n]! += cost(run, boundary.period / PARTS);
      });
    if (!runs[0]!.solver.arrays.u.every(Number.isFinite)) throw new Error("the earlier kernel failed");
    const rates = sums.map((sum) => PARTS / sum);
    const times = (n: number) => (rates[n]! / rates[0]!).toFixed(2);
    console.log(
      `${stage.padEnd(15)} ${cellsAcross} cells: ${rates.map((rate) => rate.toFixed(2)).join(", ")} s; ${times(1)} and ${times(2)} times the earlier kernel's`,
    );
  }
}
