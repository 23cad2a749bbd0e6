/** Published channel flows: developed channel, backward-facing step, sudden expansion. */

import type { FlowSolver } from "../../flow-solver/flow-solver.ts";
import type { FlowGeometry } from "../../geometry/geometry.ts";
import { box, opening, type Run, runOf, solve, turnsAlong } from "./channel.ts";

/** Dimensionless: lengths over the width, velocities over the mean. */
export interface PoiseuilleAnswer extends Run {
  /** heights over the channel's width, and u over the mean velocity there; and the exact value */
  readonly y: readonly number[];
  readonly u: readonly number[];
  readonly exact: readonly number[];
  /** greatest difference of u over its greatest value */
  readonly profileError: number;
  /** pressure slope over 12 mu U / H2, less 1 */
  readonly slopeError: number;
}

/**
 * Width 1 m, mean velocity 1 m/s, 4 m long; the viscosity follows from the Reynolds number (mean velocity and width).
 * @param cells count across the width
 */
export function solvePoiseuille(reynolds: number, cells: number, enough?: () => boolean): PoiseuilleAnswer {
  const geometry: FlowGeometry = {
    open: [box(0, 0, 4000, 1000)],
    solid: [],
    openings: [
      opening("in", [0, 500], -1, 1000, { velocity: 1 }),
      opening("out", [4000, 500], 1, 1000, { pressure: 0 }),
    ],
  };
  const settled = solve(geometry, {
    viscosity: 1 / reynolds,
    cellsAcross: cells,
    dx: 1000 / cells,
    tolerance: 1e-7,
    enough,
  });
  const { mesh, arrays } = settled.solver;
  const column = (x: number) => Math.round((x - mesh.originX) / mesh.dx + 0.5);
  const i = column(2000);
  const y: number[] = [];
  const u: number[] = [];
  const p = [0, 0];
  const [a, b] = [column(1000), column(3000)];
  for (let j = 0; j < mesh.ny; j++) {
    const k = j * mesh.nx;
    if (arrays.westArea[k + i]! === 0) continue;
    y.push((mesh.originY + j * mesh.dx) / 1000);
    u.push(arrays.u[k + i]!);
    p[0]! += arrays.p[k + a]! / cells;
    p[1]! += arrays.p[k + b]! / cells;
  }
  const exact = y.map((at) => 6 * at * (1 - at));
  const slope = (p[0]! - p[1]!) / ((b - a) * (mesh.dx / 1000));
  return {
    ...runOf(settled),
    y,
    u,
    exact,
    profileError: Math.max(...u.map((value, n) => Math.abs(value - exact[n]!))) / 1.5,
    slopeError: (slope * reynolds) / 12 - 1,
  };
}

/** Dimensionless lengths from the step. */
export interface StepAnswer extends Run {
  /** lower eddy's end, upper eddy's beginning and end, in channel heights from the step; null without such an eddy */
  readonly reattachment: number | null;
  readonly upperSeparation: number | null;
  readonly upperReattachment: number | null;
  /** the same in step heights, as Armaly reports */
  readonly reattachmentStepHeights: number | null;
}

/**
 * Step of half the channel's height, parabola entering at the step itself (Gartling 1990). Reynolds number (dimensionless) with the mean
 * velocity of the inlet and the channel's height, which is Armaly's hydraulic diameter of the inlet.
 * @param cells count across the channel's height, even
 */
export function solveStep(reynolds: number, cells: number, enough?: () => boolean): StepAnswer {
  const long = reynolds > 400 ? 18000 : 14000;
  const geometry: FlowGeometry = {
    open: [box(0, 0, long, 1000)],
    solid: [],
    openings: [
      opening("in", [0, 750], -1, 500, { velocity: 1 }),
      opening("out", [long, 500], 1, 1000, { pressure: 0 }),
    ],
  };
  const settled = solve(geometry, {
    viscosity: 1 / reynolds,
    cellsAcross: cells / 2,
    dx: 1000 / cells,
    tolerance: 1e-5,
    accelerated: true,
    enough,
  });
  const lower = turnsAlong(settled.solver, false, 0.3, long / 1000 - 0.5);
  const upper = turnsAlong(settled.solver, true, 0.3, long / 1000 - 0.5);
  return {
    ...runOf(settled),
    reattachment: lower[lower.length - 1] ?? null,
    upperSeparation: upper[0] ?? null,
    upperReattachment: upper[1] ?? null,
    reattachmentStepHeights: lower.length > 0 ? 2 * lower[lower.length - 1]! : null,
  };
}

/** Dimensionless lengths from the expansion. */
export interface ExpansionAnswer extends Run {
  /** ends of the two eddies, inlet heights from the step */
  readonly lowerReattachment: number | null;
  readonly upperReattachment: number | null;
  /** difference of the two over their mean; 0 when the flow is symmetric */
  readonly asymmetry: number | null;
}

/**
 * Symmetric sudden expansion, 1 to `ratio`; Reynolds number (dimensionless) with mean velocity and height of the inlet. The first field is
 * tilted so that an unstable symmetric flow cannot last merely because the arithmetic is symmetric.
 * @param cells count across the inlet's height
 */
export function solveExpansion(
  reynolds: number,
  cells: number,
  enough?: () => boolean,
  ratio = 2,
): ExpansionAnswer {
  const high = ratio * 1000;
  const long = 1000 * Math.max(16, 0.12 * reynolds * ratio);
  const geometry: FlowGeometry = {
    open: [box(-2000, (high - 1000) / 2, 100, (high + 1000) / 2), box(0, 0, long, high)],
    solid: [],
    openings: [
      opening("in", [-2000, high / 2], -1, 1000, { velocity: 1 }),
      opening("out", [long, high / 2], 1, high, { pressure: 0 }),
    ],
  };
  const tilt = ({ mesh, arrays }: FlowSolver): void => {
    for (let k = 0; k < arrays.v.length; k++)
      if (arrays.vInverse[k]! > 0 && mesh.originX + (k % mesh.nx) * mesh.dx > 0)
        arrays.v[k]! += 0.1 * Math.exp(-(((mesh.originX + (k % mesh.nx) * mesh.dx) / 2000 - 1) ** 2));
  };
  const settled = solve(geometry, {
    viscosity: 1 / reynolds,
    cellsAcross: cells,
    dx: 1000 / cells,
    tolerance: 1e-6,
    seed: tilt,
    enough,
  });
  const end = long / 1000 - 1;
  const lower = turnsAlong(settled.solver, false, 0.1, end)[0] ?? null;
  const upper = turnsAlong(settled.solver, true, 0.1, end)[0] ?? null;
  return {
    ...runOf(settled),
    lowerReattachment: lower,
    upperReattachment: upper,
    asymmetry: lower !== null && upper !== null ? (2 * Math.abs(lower - upper)) / (lower + upper) : null,
  };
}
