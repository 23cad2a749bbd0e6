/** Lid-driven cavity, side 1 m, lid 1 m/s: profiles at the points of Ghia, Ghia & Shin, J Comput Phys 48:387 (1982), tables I and II. */

import type { Reals } from "../../flow-solver/array-layout.ts";
import { buildMesh, type CutCellMesh } from "../../flow-solver/cut-cell-mesh.ts";
import { chooseEngine } from "../../flow-solver/engine.ts";
import { type FlowSolver, runFlowSolver } from "../../flow-solver/flow-solver.ts";
import { fillCoefficients } from "../../flow-solver/stencil-coefficients.ts";
import { accelerate } from "../accelerate.ts";
import { remap } from "../remap.ts";
import { STEADY_SOUND_SPEED_RATIO } from "./channel.ts";

/** Over the side: heights at which the table gives u on the vertical centre line, and positions at which it gives v on the horizontal one. */
export const CAVITY_Y = [
  1, 0.9766, 0.9688, 0.9609, 0.9531, 0.8516, 0.7344, 0.6172, 0.5, 0.4531, 0.2813, 0.1719, 0.1016, 0.0703,
  0.0625, 0.0547, 0,
] as const;
export const CAVITY_X = [
  1, 0.9688, 0.9609, 0.9531, 0.9453, 0.9063, 0.8594, 0.8047, 0.5, 0.2344, 0.2266, 0.1563, 0.0938, 0.0781,
  0.0703, 0.0625, 0,
] as const;

const SIDE = 1000;

/** Velocities over the lid's at places over the side, all dimensionless; counts of steps and cell updates. */
export interface CavityAnswer {
  readonly y: readonly number[];
  readonly u: readonly number[];
  readonly x: readonly number[];
  readonly v: readonly number[];
  readonly steady: boolean;
  readonly steps: number;
  readonly updates: number;
}

/**
 * Lid-driven cavity; velocities over the lid's, lengths over the side, all dimensionless.
 * @param cells count across the side
 * @param tolerance largest relative change that still counts as steady
 * @param enough asked each time the lid has travelled a quarter of its side: true ends the run as it is, not steady
 */
export function solveCavity(
  reynolds: number,
  cells: number,
  enough: () => boolean = () => false,
  tolerance = 1e-6,
): CavityAnswer {
  let solver: FlowSolver | undefined;
  let steady = false;
  let steps = 0;
  let updates = 0;
  const levels = [cells];
  while (levels[0]! % 2 === 0 && levels[0]! >= 48) levels.unshift(levels[0]! / 2);
  for (const count of levels) {
    const next = layCavity(reynolds, count);
    if (solver) remap(solver, next);
    hold(next);
    solver = next;
    [steady, steps] = run(solver, count === cells ? tolerance : 10 * tolerance, enough);
    updates += steps * next.cells;
  }
  const { mesh, arrays } = solver!;
  return {
    y: CAVITY_Y,
    u: CAVITY_Y.map((y) => between(mesh, arrays.u, cells / 2, y * cells, true)),
    x: CAVITY_X,
    v: CAVITY_X.map((x) => between(mesh, arrays.v, cells / 2, x * cells, false)),
    steady,
    steps,
    updates,
  };
}

const FIRST = 3;

function layCavity(reynolds: number, cells: number): FlowSolver {
  const choice = { dx: SIDE / cells, depth: "uniform" as const };
  const side = {
    polygon: {
      points: [
        [0, 0],
        [SIDE, 0],
        [SIDE, SIDE],
        [0, SIDE],
      ] as const,
    },
  };
  const mesh = buildMesh({ open: [side], solid: [], openings: [] }, choice);
  const engine = chooseEngine(mesh.nx * mesh.ny, "doubles");
  const a = engine.arrays;
  fillCoefficients(mesh, [], false, a);
  const top = FIRST + cells;
  for (let i = FIRST + 1; i < FIRST + cells; i++) {
    const lid = top * mesh.nx + i;
    // The lid drags instead of holding: its wall friction becomes a link to a row that moves with it, half a cell away.
    a.uFriction[lid - mesh.nx]! -= 2;
    a.uThroughCorner[lid] = 2;
  }
  return runFlowSolver(
    { mesh, choice, openings: [] },
    { kinematicViscosity: 1 / reynolds, soundSpeedRatio: STEADY_SOUND_SPEED_RATIO },
    1,
    engine,
  );
}

function hold({ mesh, arrays: { u, uAhead, uNext } }: FlowSolver): void {
  const { nx, ny } = mesh;
  const top = ny - 1;
  for (let j = top; j > 0; j--)
    if (mesh.area[(j - 1) * nx + FIRST + 2]! > 0) {
      for (let i = FIRST + 1; i < nx - FIRST - 1; i++)
        if (mesh.area[(j - 1) * nx + i]! > 0 && mesh.area[(j - 1) * nx + i - 1]! > 0) {
          const k = j * nx + i;
          u[k] = uAhead[k] = uNext[k] = 1;
        }
      return;
    }
}

/** Part of the time the lid needs for its own length between two looks. */
const STRETCH = 0.25;

/** Until the flow changes by less than `tolerance` in the time the lid needs for its own length. */
function run(solver: FlowSolver, tolerance: number, enough: () => boolean): [boolean, number] {
  const advance = accelerate(solver);
  let steps = 0;
  for (let time = 0; time < 300; time += STRETCH) {
    const count = Math.ceil(STRETCH / solver.step);
    steps += count;
    if (advance(count) < tolerance * STRETCH) return [true, steps];
    if (enough()) break;
  }
  return [false, steps];
}

/** Velocity on a middle line by cubic interpolation; the wall's (or lid's) own velocity at the ends. */
function between(mesh: CutCellMesh, values: Reals, middle: number, at: number, vertical: boolean): number {
  const cells = 2 * middle;
  if (at <= 0) return 0;
  if (at >= cells) return vertical ? 1 : 0;
  const column = FIRST + middle;
  const value = (n: number): number => {
    if (n < 0) return -value(-1 - n);
    if (n >= cells) return (vertical ? 2 : 0) - value(2 * cells - 1 - n);
    const line = FIRST + n;
    // Odd counts have their middle line between two rows of faces.
    const low = Math.floor(column);
    const share = column - low;
    const read = (c: number) => (vertical ? values[line * mesh.nx + c]! : values[c * mesh.nx + line]!);
    return share === 0 ? read(low) : 0.5 * (read(low) + read(low + 1));
  };
  const place = at - 0.5;
  const n = Math.floor(place);
  const t = place - n;
  const [a, b, c, d] = [value(n - 1), value(n), value(n + 1), value(n + 2)];
  return (
    (-t * (t - 1) * (t - 2) * a) / 6 +
    ((t + 1) * (t - 1) * (t - 2) * b) / 2 -
    ((t + 1) * t * (t - 2) * c) / 2 +
    ((t + 1) * t * (t - 1) * d) / 6
  );
}
