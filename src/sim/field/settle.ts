/** Brings the flow of given openings to rest in time: coarse grids first, then the one asked for. */
import type { FlowGeometry } from "../geometry/geometry.ts";
import { chooseEngine } from "../lattice/engine.ts";
import { type Lattice, layLattice } from "../lattice/lattice.ts";
import { rasterise } from "../lattice/raster.ts";
import { fromMmHg } from "../units.ts";
import { carryOver } from "./carry-over.ts";
import { applyGiven, openingRule } from "./drive.ts";
import { type Moment, measure, momentsMean } from "./measure.ts";

export interface SettleChoice {
  /** mm */
  readonly cell: number;
  readonly depth: "uniform" | "round";
  /** s of blood time on the finest grid at most */
  readonly maxSeconds: number;
  /** largest relative change of energy, flows, pressures and dissipation in the time that blood needs to pass its own width */
  readonly tolerance: number;
  /** cell updates after which it stops unsettled: what keeps a request from running for hours */
  readonly mostUpdates: number;
  /** for flows known to be steady, whose answer the speed of sound does not touch: slower sound, fewer steps */
  readonly soundOverSpeed?: number;
  /** asked now and then: true ends the run unsettled */
  readonly enough?: () => boolean;
}

export interface Settled {
  readonly lattice: Lattice;
  /** the last moment when steady, else means over the later half of the run */
  readonly moment: Moment;
  readonly steady: boolean;
  /** on the finest grid */
  readonly steps: number;
  /** of cells, on all grids */
  readonly updates: number;
  /** why there is no answer */
  readonly reason?: string;
}

/** Coarsest grid that is worth its while, cells across. */
const COARSEST = 5;
/** Cell updates between two looks at the flow and the clock. */
const MOST_AT_ONCE = 8e7;

export interface SettleProblem {
  readonly geometry: FlowGeometry;
  /** kg/m3 */
  readonly density: number;
  /** Pa.s */
  readonly viscosity: number;
  /** cells of the asked grid across the narrowest width */
  readonly cellsAcross: number;
}

/** @param seed disturbs the first, coarsest field */
export function settle(
  problem: SettleProblem,
  choice: SettleChoice,
  progress: (done: number) => void = () => undefined,
  seed?: (lattice: Lattice) => void,
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
        cell: choice.cell * factor,
        tolerance: finest ? choice.tolerance : Math.max(choice.tolerance, 3e-5),
        mostUpdates: finest ? choice.mostUpdates : choice.mostUpdates / 8,
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

/** The problem's lattice on one grid, begun from a coarser grid's flow or at rest. */
function begin(
  { geometry, density, viscosity }: SettleProblem,
  { cell, depth, soundOverSpeed }: SettleChoice,
  before: Settled | undefined,
): Lattice {
  const choice = { cell, depth };
  const raster = rasterise(geometry, choice);
  const rules = geometry.openings.map((opening) => openingRule(opening, undefined));
  const fluid = {
    kinematicViscosity: viscosity / density,
    ...(soundOverSpeed === undefined ? {} : { soundOverSpeed }),
  };
  const lattice = layLattice(
    { geometry, raster, choice, rules },
    fluid,
    before?.lattice.fastest ?? speedToExpect(geometry, density),
    chooseEngine(raster.nx * raster.ny),
  );
  applyGiven(lattice, density);
  if (before) {
    carryOver(before.lattice, lattice);
    applyGiven(lattice, density);
  }
  return lattice;
}

function settleLevel(
  problem: SettleProblem,
  choice: SettleChoice,
  before: Settled | undefined,
  seed?: (lattice: Lattice) => void,
): Settled {
  const { geometry, density, viscosity } = problem;
  const { maxSeconds, tolerance, mostUpdates, enough } = choice;
  const lattice = begin(problem, choice, before);
  seed?.(lattice);
  let last = measure(lattice, density, viscosity);
  const history: Moment[] = [];
  let quiet = 0;
  let steps = 0;
  while (lattice.time < maxSeconds && steps * lattice.cells < mostUpdates && (steps === 0 || !enough?.())) {
    const window = turnover(geometry, lattice);
    const count = Math.max(
      20,
      Math.min(4000, Math.ceil(window / lattice.step), Math.ceil(MOST_AT_ONCE / lattice.cells)),
    );
    const part = (count * lattice.step) / window;
    lattice.advance(count);
    steps += count;
    const moment = measure(lattice, density, viscosity);
    if (!Number.isFinite(moment.kinetic) || !Number.isFinite(moment.dissipation))
      return {
        lattice,
        moment,
        steady: false,
        steps,
        updates: steps * lattice.cells,
        reason: `the flow grew without bound after ${lattice.time.toPrecision(3)} s; more cells across may hold it`,
      };
    history.push(moment);
    quiet = change(last, moment) < tolerance * part ? quiet + 1 : 0;
    last = moment;
    if (quiet >= 3) break;
  }
  const steady = quiet >= 3;
  const moment = steady ? last : momentsMean(history.slice(history.length >> 1));
  return { lattice, moment, steady, steps, updates: steps * lattice.cells };
}

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
function turnover(geometry: FlowGeometry, lattice: Lattice): number {
  const widest = Math.max(...geometry.openings.map(({ width }) => width)) * 1e-3;
  return Math.max(widest / Math.max(lattice.fastest, 1e-6), 20 * lattice.step);
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
