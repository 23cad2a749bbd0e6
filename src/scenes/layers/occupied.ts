/** What no plate may cover: blood with its walls, the stream through a fenestration, and the heart and vessels around it. Lungs and liver are the ground on which all else lies. */

import { entryAt } from "../../sim/checked/present.ts";
import { outlineDistance } from "../../sim/geometry/distance.ts";
import type { Opening, PathwayGeometry, Point } from "../../sim/geometry/geometry.ts";
import { anatomyOf } from "../anatomy/chest-anatomy.ts";
import { type Plane, streamOutline } from "./drawn-plane.ts";
import { FADE, fadeReach, WALL } from "./fade.ts";

export interface Occupied {
  /** Whether a rectangle (mm, y up) touches any part but its own. */
  covers(left: number, bottom: number, right: number, top: number, own: string): boolean;
}

/** mm: a cell counts as taken when the part comes within half its diagonal */
const CELL = 1;
const REACH = CELL * Math.SQRT1_2;
/** mm: the thickest half of a stroke with which a part is drawn */
const STROKE = 2;
/** A beating chamber's outline over its mean one, at most. */
const SWOLLEN = 1.1;

interface Part {
  readonly name: string;
  readonly outline: readonly Point[];
}

export function occupied(geometry: PathwayGeometry, plane: Plane): Occupied {
  const parts: Part[] = [
    ...anatomyOf(geometry.chest).parts.filter(({ ground }) => !ground),
    ...geometry.openings.filter(({ name }) => name !== "fenestration").map(beyond),
    // Last: it runs into the atrium, and the atrium's own plate keeps off it too.
    ...geometry.openings
      .filter(({ name }) => name === "fenestration")
      .map((hole) => ({ name: "", outline: streamOutline(hole) })),
  ];
  const xs = parts.flatMap(({ outline }) => outline.map(([x]) => x));
  const ys = parts.flatMap(({ outline }) => outline.map(([, y]) => y));
  const left = Math.floor(Math.min(plane.originX, ...xs)) - 4;
  const bottom = Math.floor(Math.min(plane.originY, ...ys)) - 4;
  const nx = Math.ceil(Math.max(plane.originX + plane.nx * plane.dx, ...xs) - left) + 4;
  const ny = Math.ceil(Math.max(plane.originY + plane.ny * plane.dx, ...ys) - bottom) + 4;

  const taken = new Uint8Array(nx * ny);
  /** 1 + index of the part that shows there, well inside its outline */
  const owner = new Uint8Array(nx * ny);
  parts.forEach(({ name, outline }, index) => {
    const beating = BEATING.includes(name);
    const mean = outlineDistance(outline);
    const largest = beating ? outlineDistance(swollen(outline)) : mean;
    const reach = (values: readonly number[], from: number, count: number): [number, number] => {
      const air = 4 + (SWOLLEN - 1) * (Math.max(...values) - Math.min(...values));
      return [
        Math.max(0, Math.floor(Math.min(...values) - from - air)),
        Math.min(count - 1, Math.ceil(Math.max(...values) - from + air)),
      ];
    };
    const [i0, i1] = reach(
      outline.map(([x]) => x),
      left,
      nx,
    );
    const [j0, j1] = reach(
      outline.map(([, y]) => y),
      bottom,
      ny,
    );
    for (let j = j0; j <= j1; j++)
      for (let i = i0; i <= i1; i++) {
        const away = largest(left + i, bottom + j) - STROKE - REACH;
        // A distance changes by no more than the way gone: the cells between are free too.
        if (away >= 0) i += Math.floor(away / CELL);
        if (away >= 0) continue;
        const inside = beating ? mean(left + i, bottom + j) : away + STROKE + REACH;
        const isOwn = inside < -REACH;
        // As many on lie well inside as well.
        const alike = isOwn ? Math.max(1, Math.ceil(-Math.max(inside + REACH, away) / CELL)) : 1;
        const [from, to] = [j * nx + i, j * nx + Math.min(i1 + 1, i + alike)];
        taken.fill(1, from, to);
        owner.fill(isOwn ? index + 1 : 0, from, to);
        i += alike - 1;
      }
  });
  for (let j = 0; j < plane.ny; j++)
    for (let i = 0; i < plane.nx; i++) {
      if (entryAt(plane.distance, j * plane.nx + i) >= WALL + 2 * REACH) continue;
      const x = Math.round(plane.originX + i * plane.dx - left);
      const y = Math.round(plane.originY + j * plane.dx - bottom);
      taken[y * nx + x] = 1;
      owner[y * nx + x] = 0;
    }

  const all = summed(taken, nx, ny, 1);
  const ownSums = new Map<string, Sums>();
  const sumsOf = (own: string): Sums | undefined => {
    const index = parts.findIndex(({ name }) => name === own);
    if (index < 0) return undefined;
    if (!ownSums.has(own)) ownSums.set(own, summed(owner, nx, ny, index + 1));
    return ownSums.get(own);
  };
  return {
    covers(x0, y0, x1, y1, own) {
      const clip = (value: number, count: number) => Math.min(count, Math.max(0, value));
      const [i0, i1] = [clip(Math.floor(x0 - left), nx), clip(Math.ceil(x1 - left) + 1, nx)];
      const [j0, j1] = [clip(Math.floor(y0 - bottom), ny), clip(Math.ceil(y1 - bottom) + 1, ny)];
      if (i0 >= i1 || j0 >= j1) return false;
      return all(i0, j0, i1, j1) > (sumsOf(own)?.(i0, j0, i1, j1) ?? 0);
    },
  };
}

/** How many cells of a block are the wanted ones, its upper ends left out. */
type Sums = (i0: number, j0: number, i1: number, j1: number) => number;

function summed(cells: Uint8Array, nx: number, ny: number, wanted: number): Sums {
  const total = new Int32Array((nx + 1) * (ny + 1));
  for (let j = 0; j < ny; j++) {
    let row = 0;
    for (let i = 0; i < nx; i++) {
      if (cells[j * nx + i] === wanted) row++;
      total[(j + 1) * (nx + 1) + i + 1] = entryAt(total, j * (nx + 1) + i + 1) + row;
    }
  }
  const at = (i: number, j: number) => entryAt(total, j * (nx + 1) + i);
  return (i0, j0, i1, j1) => at(i1, j1) - at(i0, j1) - at(i1, j0) + at(i0, j0);
}

const BEATING: readonly string[] = ["atrium", "ventricle"];

function swollen(outline: readonly Point[]): Point[] {
  const middle = (k: 0 | 1) => outline.reduce((sum, point) => sum + point[k], 0) / outline.length;
  const [x, y] = [middle(0), middle(1)];
  return outline.map(([px, py]) => [x + SWOLLEN * (px - x), y + SWOLLEN * (py - y)]);
}

/** The stretch over which a cut vessel is still drawn. */
function beyond({ centre: [x, y], normal: [nx, ny], width }: Opening): Part {
  const [reach, half] = [FADE * fadeReach(width), width / 2 + WALL];
  const corner = (along: number, across: number): Point => [
    x + nx * along - ny * across,
    y + ny * along + nx * across,
  ];
  return {
    name: "",
    outline: [corner(0, half), corner(reach, half), corner(reach, -half), corner(0, -half)],
  };
}
