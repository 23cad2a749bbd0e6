/** Channels of the literature: plane Poiseuille, backward-facing step, symmetric expansion, cylinder. Lengths in metres where 1 m = 1000 mm. */
import type { FlowGeometry, Point, Shape } from "../../geometry/geometry.ts";
import type { Lattice } from "../../lattice/lattice.ts";
import { type Settled, settle } from "../settle.ts";

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
export function solve(
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

export interface Run {
  readonly steady: boolean;
  readonly steps: number;
  readonly updates: number;
}
export const runOf = ({ steady, steps, updates }: Settled): Run => ({ steady, steps, updates });

/** Row index of the lowest (or highest) row of cells in column `i`. */
function edgeRow({ nx, ny, area }: Lattice["raster"], i: number, fromTop: boolean): number {
  for (let n = 1; n < ny - 1; n++) {
    const j = fromTop ? ny - 1 - n : n;
    if (area[j * nx + i]! > 0.3) return j;
  }
  return -1;
}

/** Places (m) where the flow along the bottom or top wall turns about, between `from` and `to` (m). */
export function turnsAlong(lattice: Lattice, fromTop: boolean, from: number, to: number): number[] {
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
