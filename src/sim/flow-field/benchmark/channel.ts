/** Channels of the literature: plane Poiseuille, backward-facing step, symmetric expansion, cylinder. Lengths in metres where 1 m = 1000 mm. */

import type { FlowSolver } from "../../flow-solver/flow-solver.ts";
import type { FlowGeometry, Point, Shape } from "../../geometry/geometry.ts";
import { type Settled, settle } from "../steady-state.ts";

/** A rectangle by its edges, mm. */
export const box = (left: number, bottom: number, right: number, top: number): Shape => ({
  polygon: {
    points: [
      [left, bottom],
      [right, bottom],
      [right, top],
      [left, top],
    ],
  },
});

/** An opening across a channel: `at` and `width` in mm, velocity in m/s or pressure in mmHg. */
export const opening = (
  name: string,
  at: Point,
  out: 1 | -1,
  width: number,
  given: { velocity?: number; pressure?: number },
) => ({
  name,
  centre: at,
  normal: [out, 0] as Point,
  width,
  ...given,
});

const MAX_UPDATES = 1e10;
/** All these flows become steady, so the sound speed may be this low a multiple of the fastest flow. */
export const STEADY_SOUND_SPEED_RATIO = 2;

interface Channel {
  readonly viscosity: number;
  readonly cellsAcross: number;
  /** mm */
  readonly dx: number;
  readonly tolerance: number;
  readonly seed?: (solver: FlowSolver) => void;
  /** the flow has one steady state, and reaches it */
  readonly accelerated?: boolean;
  readonly enough?: (() => boolean) | undefined;
}

/** Steady flow of a fluid of density 1 kg/m3; viscosity in Pa.s, dx in mm. */
export function solve(
  geometry: FlowGeometry,
  { viscosity, cellsAcross, dx, tolerance, seed, accelerated = false, enough = () => false }: Channel,
): Settled {
  const choice = {
    dx,
    depth: "uniform" as const,
    maxSeconds: 2000,
    tolerance,
    maxUpdates: MAX_UPDATES,
    soundSpeedRatio: STEADY_SOUND_SPEED_RATIO,
    accelerated,
    enough,
  };
  return settle({ geometry, density: 1, viscosity, cellsAcross }, choice, undefined, seed);
}

/** How the run went: counts of steps and of cell updates. */
export interface Run {
  readonly steady: boolean;
  readonly steps: number;
  readonly updates: number;
}

/** The counts of a settled run. */
export const runOf = ({ steady, steps, updates }: Settled): Run => ({ steady, steps, updates });

/** Row index of the lowest (or highest) row of cells in column `i`. */
function edgeRow({ nx, ny, area }: FlowSolver["mesh"], i: number, fromTop: boolean): number {
  for (let n = 1; n < ny - 1; n++) {
    const j = fromTop ? ny - 1 - n : n;
    if (area[j * nx + i]! > 0.3) return j;
  }
  return -1;
}

/** Positions (m) where the flow along the bottom or top wall reverses, between `from` and `to` (m). */
export function turnsAlong(solver: FlowSolver, fromTop: boolean, from: number, to: number): number[] {
  const { mesh, arrays } = solver;
  const turns: number[] = [];
  let last = Number.NaN;
  for (let i = 2; i < mesh.nx - 2; i++) {
    const x = (mesh.originX + (i - 0.5) * mesh.dx) / 1000;
    if (x <= from || x >= to) continue;
    const j = edgeRow(mesh, i, fromTop);
    if (j < 0) continue;
    const here = arrays.u[j * mesh.nx + i]!;
    if (Number.isFinite(last) && here < 0 !== last < 0)
      turns.push(x - (mesh.dx / 1000) * (here / (here - last)));
    last = here;
  }
  return turns;
}
