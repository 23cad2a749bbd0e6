/** Channels of the literature: plane Poiseuille, backward-facing step, symmetric expansion, cylinder. Lengths in metres where 1 m = 1000 mm. */
import type { FlowGeometry, Point, Shape } from "../../geometry/geometry.ts";
import type { Lattice } from "../../lattice/lattice.ts";
import { type Settled, settle } from "../settle.ts";

const box = (left: number, bottom: number, right: number, top: number): Shape => ({
  polygon: {
    points: [
      [left, bottom],
      [right, bottom],
      [right, top],
      [left, top],
    ],
  },
});

const opening = (
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

const MOST_UPDATES = 6e9;
/** All these flows come to rest. */
export const STEADY_SOUND = 2;

interface Channel {
  readonly viscosity: number;
  readonly cellsAcross: number;
  /** mm */
  readonly cell: number;
  readonly tolerance: number;
  readonly seed?: (lattice: Lattice) => void;
  readonly enough?: (() => boolean) | undefined;
}

/** Steady flow of a fluid of density 1. */
function solve(
  geometry: FlowGeometry,
  { viscosity, cellsAcross, cell, tolerance, seed, enough = () => false }: Channel,
): Settled {
  const choice = {
    cell,
    depth: "uniform" as const,
    maxSeconds: 2000,
    tolerance,
    mostUpdates: MOST_UPDATES,
    soundOverSpeed: STEADY_SOUND,
    enough,
  };
  return settle({ geometry, density: 1, viscosity, cellsAcross }, choice, undefined, seed);
}

interface Run {
  readonly steady: boolean;
  readonly steps: number;
  readonly updates: number;
}
const runOf = ({ steady, steps, updates }: Settled): Run => ({ steady, steps, updates });

/** Row index of the lowest (or highest) row of cells in column `i`. */
function edgeRow({ nx, ny, area }: Lattice["raster"], i: number, fromTop: boolean): number {
  for (let n = 1; n < ny - 1; n++) {
    const j = fromTop ? ny - 1 - n : n;
    if (area[j * nx + i]! > 0.3) return j;
  }
  return -1;
}

/** Places (m) where the flow along the bottom or top wall turns about, between `from` and `to` (m). */
function turnsAlong(lattice: Lattice, fromTop: boolean, from: number, to: number): number[] {
  const { raster, arrays } = lattice;
  const turns: number[] = [];
  let last = Number.NaN;
  for (let i = 2; i < raster.nx - 2; i++) {
    const x = (raster.originX + (i - 0.5) * raster.cell) / 1000;
    if (x <= from || x >= to) continue;
    const j = edgeRow(raster, i, fromTop);
    if (j < 0) continue;
    const here = arrays.u[j * raster.nx + i]!;
    if (Number.isFinite(last) && here < 0 !== last < 0)
      turns.push(x - (raster.cell / 1000) * (here / (here - last)));
    last = here;
  }
  return turns;
}

export interface PoiseuilleAnswer extends Run {
  /** heights over the channel's width, and u over the mean velocity there; the exact value beside it */
  readonly y: readonly number[];
  readonly u: readonly number[];
  readonly exact: readonly number[];
  /** greatest difference of u over its greatest value */
  readonly profileError: number;
  /** pressure slope over 12 mu U / H2, less 1 */
  readonly slopeError: number;
}

/** Width 1 m, mean velocity 1 m/s, 4 m long; the fluid's viscosity from the Reynolds number (mean velocity and width). */
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
    cell: 1000 / cells,
    tolerance: 1e-7,
    enough,
  });
  const { raster, arrays } = settled.lattice;
  const column = (x: number) => Math.round((x - raster.originX) / raster.cell + 0.5);
  const i = column(2000);
  const y: number[] = [];
  const u: number[] = [];
  const p = [0, 0];
  const [a, b] = [column(1000), column(3000)];
  for (let j = 0; j < raster.ny; j++) {
    const k = j * raster.nx;
    if (arrays.westArea[k + i]! === 0) continue;
    y.push((raster.originY + j * raster.cell) / 1000);
    u.push(arrays.u[k + i]!);
    p[0]! += arrays.p[k + a]! / cells;
    p[1]! += arrays.p[k + b]! / cells;
  }
  const exact = y.map((at) => 6 * at * (1 - at));
  const slope = (p[0]! - p[1]!) / ((b - a) * (raster.cell / 1000));
  return {
    ...runOf(settled),
    y,
    u,
    exact,
    profileError: Math.max(...u.map((value, n) => Math.abs(value - exact[n]!))) / 1.5,
    slopeError: (slope * reynolds) / 12 - 1,
  };
}

export interface StepAnswer extends Run {
  /** lower eddy's end, upper eddy's beginning and end, in channel heights from the step; absent when there is none */
  readonly reattachment: number | null;
  readonly upperSeparation: number | null;
  readonly upperReattachment: number | null;
  /** the same in step heights, as Armaly reports */
  readonly reattachmentStepHeights: number | null;
}

/**
 * Step of half the channel's height, parabola entering at the step itself (Gartling 1990). Reynolds number with the mean velocity of
 * the inlet and the channel's height, which is Armaly's hydraulic diameter of the inlet.
 */
export function solveStep(reynolds: number, cells: number, enough?: () => boolean): StepAnswer {
  const long = reynolds > 400 ? 24000 : 14000;
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
    cell: 1000 / cells,
    tolerance: 2e-6,
    enough,
  });
  const lower = turnsAlong(settled.lattice, false, 0.3, long / 1000 - 0.5);
  const upper = turnsAlong(settled.lattice, true, 0.3, long / 1000 - 0.5);
  return {
    ...runOf(settled),
    reattachment: lower[lower.length - 1] ?? null,
    upperSeparation: upper[0] ?? null,
    upperReattachment: upper[1] ?? null,
    reattachmentStepHeights: lower.length > 0 ? 2 * lower[lower.length - 1]! : null,
  };
}

export interface ExpansionAnswer extends Run {
  /** ends of the two eddies, inlet heights from the step */
  readonly lowerReattachment: number | null;
  readonly upperReattachment: number | null;
  /** difference of the two over their mean; 0 when the flow is symmetric */
  readonly asymmetry: number | null;
}

/**
 * Symmetric sudden expansion, 1 to `ratio`; Reynolds number with mean velocity and height of the inlet. The first field is tilted so that
 * an unsteady balance cannot stay symmetric by arithmetic alone.
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
  const tilt = ({ raster, arrays }: Lattice): void => {
    for (let k = 0; k < arrays.v.length; k++)
      if (arrays.vInverse[k]! > 0 && raster.originX + (k % raster.nx) * raster.cell > 0)
        arrays.v[k]! += 0.1 * Math.exp(-(((raster.originX + (k % raster.nx) * raster.cell) / 2000 - 1) ** 2));
  };
  const settled = solve(geometry, {
    viscosity: 1 / reynolds,
    cellsAcross: cells,
    cell: 1000 / cells,
    tolerance: 1e-6,
    seed: tilt,
    enough,
  });
  const end = long / 1000 - 1;
  const lower = turnsAlong(settled.lattice, false, 0.1, end)[0] ?? null;
  const upper = turnsAlong(settled.lattice, true, 0.1, end)[0] ?? null;
  return {
    ...runOf(settled),
    lowerReattachment: lower,
    upperReattachment: upper,
    asymmetry: lower !== null && upper !== null ? (2 * Math.abs(lower - upper)) / (lower + upper) : null,
  };
}

export interface CylinderAnswer extends Run {
  readonly dragCoefficient: number;
  readonly liftCoefficient: number;
  /** Pa, front less back, with the table's density 1 kg/m3 */
  readonly pressureDifference: number;
}

/** Case 2D-1 of Schaefer & Turek (1996): channel 2.2 m x 0.41 m, cylinder of 0.1 m at (0.2, 0.2), mean 0.2 m/s at Reynolds number 20. */
export function solveCylinder(reynolds: number, cells: number, enough?: () => boolean): CylinderAnswer {
  const mean = 0.2;
  const geometry: FlowGeometry = {
    open: [box(0, 0, 2200, 410)],
    solid: [{ disc: { centre: [200, 200], radius: 50 } }],
    openings: [
      opening("in", [0, 205], -1, 410, { velocity: mean }),
      opening("out", [2200, 205], 1, 410, { pressure: 0 }),
    ],
  };
  const viscosity = (mean * 0.1) / reynolds;
  const settled = solve(geometry, {
    viscosity,
    cellsAcross: cells,
    cell: 410 / cells,
    tolerance: 1e-6,
    enough,
  });
  const { raster, arrays } = settled.lattice;
  const { nx, ny, cell, originX, originY, west, south } = raster;
  let drag = 0;
  let lift = 0;
  const near = (x: number, y: number) => Math.hypot(x - 200, y - 200) < 50 + 4 * cell;
  for (let j = 2; j < ny - 2; j++)
    for (let i = 2; i < nx - 2; i++) {
      const k = j * nx + i;
      if (!near(originX + i * cell, originY + j * cell)) continue;
      // Pressure on the wall piece in the cell, friction on each face beside it, and shear on faces that the wall closes.
      drag += (arrays.p[k]! * (west[k]! - west[k + 1]!) * cell) / 1000;
      lift += (arrays.p[k]! * (south[k]! - south[k + nx]!) * cell) / 1000;
      if (west[k]! > 0)
        drag +=
          viscosity *
          arrays.u[k]! *
          (arrays.uFriction[k]! / arrays.uInverse[k]! +
            shut(west, k + 1, arrays.uThroughCell[k]!) +
            shut(west, k - 1, arrays.uThroughCell[k - 1]!) +
            shut(west, k + nx, arrays.uThroughCorner[k + nx]!) +
            shut(west, k - nx, arrays.uThroughCorner[k]!));
      if (south[k]! > 0)
        lift +=
          viscosity *
          arrays.v[k]! *
          (arrays.vFriction[k]! / arrays.vInverse[k]! +
            shut(south, k + nx, arrays.vThroughCell[k]!) +
            shut(south, k - nx, arrays.vThroughCell[k - nx]!) +
            shut(south, k + 1, arrays.vThroughCorner[k + 1]!) +
            shut(south, k - 1, arrays.vThroughCorner[k]!));
    }
  const scale = 2 / (mean * mean * 0.1);
  return {
    ...runOf(settled),
    dragCoefficient: scale * drag,
    liftCoefficient: scale * lift,
    pressureDifference: wallPressure(settled.lattice, 150, -1) - wallPressure(settled.lattice, 250, 1),
  };
}

/** A link whose other end the wall has closed. */
const shut = (open: Float64Array, other: number, link: number): number => (open[other] === 0 ? link : 0);

/** Pressure on the cylinder at (x, 200), carried on from whole cells outward. */
function wallPressure({ raster, arrays }: Lattice, x: number, outward: 1 | -1): number {
  const { nx, cell, originX, originY } = raster;
  const sample = (at: number): number => {
    const fx = (at - originX) / cell;
    const fy = (200 - originY) / cell;
    const i = Math.floor(fx);
    const j = Math.floor(fy);
    const [a, b] = [fx - i, fy - j];
    const p = (m: number, n: number) => arrays.p[(j + n) * nx + i + m]!;
    return (1 - b) * ((1 - a) * p(0, 0) + a * p(1, 0)) + b * ((1 - a) * p(0, 1) + a * p(1, 1));
  };
  // Parabola through three points 1, 2 and 3 cells out: the nearest whose neighbours are blood, for the pressure has a cusp there.
  const out = (cells: number) => sample(x + cells * cell * outward);
  return 3 * out(1) - 3 * out(2) + out(3);
}
