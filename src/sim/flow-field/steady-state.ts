/** Advances the flow of given openings until it is steady: coarse grids first, then the one asked for. */

import { buildMesh } from "../flow-solver/cut-cell-mesh.ts";
import { chooseEngine } from "../flow-solver/engine.ts";
import { buildFlowSolver, type FlowSolver } from "../flow-solver/flow-solver.ts";
import type { FlowGeometry } from "../geometry/geometry.ts";
import { fromMmHg } from "../units.ts";
import { accelerate } from "./accelerate.ts";
import { applyGiven, openingRule } from "./boundary-conditions.ts";
import { gauge, type Moment, momentsMean } from "./measure.ts";
import { remap } from "./remap.ts";

/** Grid and limits of a run to the steady state. */
export interface SettleChoice {
  /** mm */
  readonly dx: number;
  readonly depth: "uniform" | "round";
  /** s of blood time on the finest grid at most */
  readonly maxSeconds: number;
  /** largest relative change (a fraction) of energy, flows, pressures and dissipation (and when accelerated of all velocities and pressures together, root mean square) while blood travels the narrowest width */
  readonly tolerance: number;
  /** count of cell updates after which it stops unsettled, so that no request runs for hours */
  readonly maxUpdates: number;
  /** ratio of sound speed to the fastest blood; lower for flows known to be steady, whose answer does not depend on it: fewer steps */
  readonly soundSpeedRatio?: number;
  /** for flows known to have one steady state and to reach it: goes there in fewer steps, not through time */
  readonly accelerated?: boolean;
  /** asked now and then: true ends the run unsettled */
  readonly enough?: () => boolean;
}

/** The flow at the end of the run. */
export interface Settled {
  readonly solver: FlowSolver;
  /** the last moment when steady, else means over the later half of the run */
  readonly moment: Moment;
  readonly steady: boolean;
  /** count on the finest grid */
  readonly steps: number;
  /** count of cell updates on all grids */
  readonly updates: number;
  /** why there is no answer */
  readonly reason?: string;
}

/** Cells across the narrowest width below which a coarser grid no longer helps. */
const COARSEST = 5;
/** Cell updates between two looks at the flow and the clock. */
const MAX_AT_ONCE = 8e7;

/** Plane and fluid to solve. */
export interface SettleProblem {
  readonly geometry: FlowGeometry;
  /** kg/m3 */
  readonly density: number;
  /** Pa.s */
  readonly viscosity: number;
  /** cells of the asked grid across the narrowest width */
  readonly cellsAcross: number;
}

/**
 * Advances until steady or until a limit of `choice` is reached; a flow that grows without bound has a `reason`.
 * @param progress fraction done, 0 to 1
 * @param seed disturbs the first, coarsest field
 */
export function settle(
  problem: SettleProblem,
  choice: SettleChoice,
  progress: (done: number) => void = () => undefined,
  seed?: (solver: FlowSolver) => void,
): Settled {
  const { cellsAcross } = problem;
  const levels: number[] = [1];
  while (cellsAcross / (2 * levels[0]!) >= COARSEST && levels.length < 4) levels.unshift(2 * levels[0]!);
  let before: Settled | undefined;
  let updates = 0;
  for (const factor of levels) {
    const finest = factor === 1;
    const next = settleLevel(
      problem,
      {
        ...choice,
        dx: choice.dx * factor,
        tolerance: finest ? choice.tolerance : Math.max(choice.tolerance, 3e-5),
        maxUpdates: finest ? choice.maxUpdates : choice.maxUpdates / 8,
      },
      before,
      before ? undefined : seed,
    );
    updates += next.updates;
    // A coarse grid may fail where the fine one does not.
    if (next.reason && !finest) continue;
    before = next;
    progress(1 / factor ** 2);
  }
  return { ...before!, updates };
}

/** The problem's flow solver on one grid, started from a coarser grid's flow or at rest. */
function begin(
  { geometry, density, viscosity }: SettleProblem,
  { dx, depth, soundSpeedRatio }: SettleChoice,
  before: Settled | undefined,
): FlowSolver {
  const choice = { dx, depth };
  const mesh = buildMesh(geometry, choice);
  const rules = geometry.openings.map((opening) => openingRule(opening, undefined));
  const fluid = {
    kinematicViscosity: viscosity / density,
    ...(soundSpeedRatio === undefined ? {} : { soundSpeedRatio }),
  };
  const solver = buildFlowSolver(
    { geometry, mesh, choice, rules },
    fluid,
    before?.solver.fastest ?? speedToExpect(geometry, density),
    chooseEngine(mesh.nx * mesh.ny, "doubles"),
  );
  applyGiven(solver, density);
  if (before) {
    remap(before.solver, solver);
    applyGiven(solver, density);
  }
  return solver;
}

function settleLevel(
  problem: SettleProblem,
  choice: SettleChoice,
  before: Settled | undefined,
  seed?: (solver: FlowSolver) => void,
): Settled {
  const { geometry, density, viscosity } = problem;
  const { maxSeconds, tolerance, maxUpdates, accelerated, enough } = choice;
  const solver = begin(problem, choice, before);
  const advance = accelerated ? accelerate(solver) : advancePlainly(solver);
  seed?.(solver);
  const measure = gauge(solver, density, viscosity);
  let last = measure();
  const history: Moment[] = [];
  let quiet = 0;
  let steps = 0;
  while (solver.time < maxSeconds && steps * solver.cells < maxUpdates && (steps === 0 || !enough?.())) {
    const window = turnover(geometry, solver);
    const count = Math.max(
      20,
      Math.min(4000, Math.ceil(window / solver.step), Math.ceil(MAX_AT_ONCE / solver.cells)),
    );
    const part = (count * solver.step) / window;
    const moved = advance(count);
    steps += count;
    const moment = measure();
    if (!Number.isFinite(moment.kinetic) || !Number.isFinite(moment.dissipation))
      return {
        solver,
        moment,
        steady: false,
        steps,
        updates: steps * solver.cells,
        reason: `the flow grew without bound after ${solver.time.toPrecision(3)} s; more cells across may hold it`,
      };
    history.push(moment);
    quiet = Math.max(moved, change(last, moment)) < tolerance * part ? quiet + 1 : 0;
    last = moment;
    if (quiet >= 3) break;
  }
  const steady = quiet >= 3;
  const moment = steady ? last : momentsMean(history.slice(history.length >> 1));
  return { solver, moment, steady, steps, updates: steps * solver.cells };
}

/** As {@link accelerate}, through time; what moves is judged by the moment alone. */
const advancePlainly = (solver: FlowSolver) => (steps: number) => {
  solver.advance(steps);
  return 0;
};

/** m/s: from given velocities, and from given pressure differences turned into speed. */
function speedToExpect(geometry: FlowGeometry, density: number): number {
  const pressures = geometry.openings.flatMap(({ pressure }) =>
    pressure === undefined ? [] : [fromMmHg(pressure)],
  );
  const head = pressures.length > 1 ? Math.max(...pressures) - Math.min(...pressures) : 0;
  const velocities = geometry.openings.map(({ velocity }) => 2 * Math.abs(velocity ?? 0));
  return Math.max(1e-4, ...velocities, Math.sqrt((2 * head) / density));
}

/** s: the widest opening's width over the fastest blood, and never less than a handful of steps. */
function turnover(geometry: FlowGeometry, solver: FlowSolver): number {
  const widest = Math.max(...geometry.openings.map(({ width }) => width)) * 1e-3;
  return Math.max(widest / Math.max(solver.fastest, 1e-6), 20 * solver.step);
}

function change(a: Moment, b: Moment): number {
  const flow = Math.max(...b.openings.map((opening) => Math.abs(opening.flow)), 1e-30);
  const pressures = b.openings.map(({ pressure }) => pressure);
  const head = Math.max(Math.max(...pressures) - Math.min(...pressures), 1e-30);
  let most = Math.abs(b.kinetic - a.kinetic) / Math.max(b.kinetic, 1e-30);
  most = Math.max(most, Math.abs(b.dissipation - a.dissipation) / Math.max(b.dissipation, 1e-30));
  b.openings.forEach((opening, n) => {
    most = Math.max(most, Math.abs(opening.flow - a.openings[n]!.flow) / flow);
    most = Math.max(most, Math.abs(opening.pressure - a.openings[n]!.pressure) / head);
  });
  const net = b.openings.reduce((sum, opening) => sum + opening.flow, 0);
  return Math.max(most, (0.01 * Math.abs(net)) / flow);
}
