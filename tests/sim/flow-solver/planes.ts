/** Planes with all that a kernel must do, and solvers in them. */
import { applyBoundary, applyGiven, openingRule } from "../../../src/sim/flow-field/boundary-conditions.ts";
import type { BoundaryConditions } from "../../../src/sim/flow-field/flow-field.ts";
import type { SolverArrays } from "../../../src/sim/flow-solver/array-layout.ts";
import { buildMesh } from "../../../src/sim/flow-solver/cut-cell-mesh.ts";
import {
  buildFlowSolver,
  type Engine,
  type FlowSolver,
  LOOK_EVERY,
  type SoundSteps,
} from "../../../src/sim/flow-solver/flow-solver.ts";
import type { Gpu } from "../../../src/sim/flow-solver/gpu/gpu.ts";
import { nextBatch, noteFlow } from "../../../src/sim/flow-solver/step-batch.ts";
import type { FlowGeometry } from "../../../src/sim/geometry/geometry.ts";
import { pathwayGeometry } from "../../../src/sim/geometry/pathways/index.ts";
import { CASES, type Stage } from "../../../src/sim/parameters/request.ts";
import { crossing } from "../flow-field/planes.ts";

export const DRIVE: BoundaryConditions = {
  period: 0.5,
  inflow: { ivc: Float32Array.of(40, 20), svc: Float32Array.of(20, 30) },
  split: { left: 0.45, right: 0.55 },
  outflow: { fenestration: Float32Array.of(6) },
};

const pathway = (stage: Stage) =>
  pathwayGeometry({
    kind: "circulation",
    stage,
    body: CASES.caseA,
    volumeRule: "hold-output",
    set: { fenestrationDiameter: 4, cavalOffset: 6 },
  })!;

/** Walls, depth and its steps, a hole, given velocities, given pressures and pressures that follow a flow. */
export const PLANES: readonly (readonly [string, FlowGeometry])[] = [
  ["two veins off axis", crossing()],
  ...(["atriopulmonary", "lateral-tunnel", "extracardiac"] as const).map(
    (stage) => [stage, pathway(stage)] as const,
  ),
];

/** A solver with cells of `dx` (mm), driven by {@link DRIVE}. */
export function solverIn(
  geometry: FlowGeometry,
  dx: number,
  engine: (count: number) => Engine,
  soundSteps: SoundSteps = 1,
): FlowSolver {
  const choice = { dx, depth: "round" as const };
  const mesh = buildMesh(geometry, choice);
  const solver = buildFlowSolver(
    { geometry, mesh, choice, rules: geometry.openings.map((opening) => openingRule(opening, DRIVE)) },
    { kinematicViscosity: 3.3e-6, soundSteps },
    0.4,
    engine(mesh.nx * mesh.ny),
  );
  applyGiven(solver, 1060);
  return solver;
}

/** Steps on a GPU, in batches between which the fastest blood is looked for as often as the plain time step looks. */
export async function onGpu(gpu: Gpu, solver: FlowSolver, steps: number): Promise<void> {
  const flow = gpu.load(solver);
  for (let left = steps; left > 0; left -= LOOK_EVERY) {
    const count = Math.min(left, LOOK_EVERY);
    await flow.run(nextBatch(solver, count, (time) => applyBoundary(solver, DRIVE, time, noteFlow)));
    solver.passed(count);
  }
  flow.release();
}

/** Greatest difference of u, v and p over the greatest value of each. */
export function apart(a: SolverArrays, b: SolverArrays): number {
  return Math.max(
    ...(["u", "v", "p"] as const).map((name) => {
      let most = 0;
      let difference = 0;
      a[name].forEach((value, k) => {
        most = Math.max(most, Math.abs(value));
        difference = Math.max(difference, Math.abs(value - b[name][k]!));
      });
      return most > 0.01 && Number.isFinite(difference) ? difference / most : Number.NaN;
    }),
  );
}
