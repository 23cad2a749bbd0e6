/** Wall outlines traced from the signed distance by marching squares: for drawing, and for clots to collide with. */

import { entryAt, present } from "../checked/present.ts";
import { type Distance, planeDistance, seenFrom, shapeBounds } from "./distance.ts";
import type { FlowGeometry, Opening, Point } from "./geometry.ts";

/** One closed outline in mm, the blood on its left. */
export interface WallOutline {
  readonly points: readonly Point[];
  /** [points.length]: name of the opening that the piece from point i to the next lies on; null where it is wall */
  readonly openings: readonly (string | null)[];
}

/**
 * All outlines in mm, the longest first.
 * @param dx mm: mesh width; finer detail is lost (use a third of the narrowest lumen, at most 1 mm)
 */
export function wallOutlines(geometry: FlowGeometry, dx: number): WallOutline[] {
  const distance = closedDistance(geometry, dx);
  const boxes = geometry.open.map(shapeBounds);
  const left = Math.min(...boxes.map((box) => box[0])) - 2 * dx;
  const bottom = Math.min(...boxes.map((box) => box[1])) - 2 * dx;
  const nx = Math.ceil((Math.max(...boxes.map((box) => box[2])) - left) / dx) + 3;
  const ny = Math.ceil((Math.max(...boxes.map((box) => box[3])) - bottom) / dx) + 3;
  const mesh: Mesh = { left, bottom, dx, nx, ny, value: new Float64Array(nx * ny) };
  fill(mesh, distance);
  return loops(mesh)
    .map((points) => ({
      points,
      openings: points.map((point, i) =>
        openingOf(geometry, dx, point, entryAt(points, (i + 1) % points.length)),
      ),
    }))
    .sort((one, other) => other.points.length - one.points.length);
}

/** Positive beyond the openings too, so that every outline closes; steep there as at a wall. */
function closedDistance(geometry: FlowGeometry, dx: number): Distance {
  const distance = planeDistance(geometry, 0);
  return (x, y) => {
    let value = distance(x, y);
    for (const opening of geometry.openings) {
      const { beyond, across } = seenFrom(opening, x, y);
      const near = Math.abs(beyond) <= Math.max(2 * dx, opening.width * 0.6);
      if (near && Math.abs(across) <= opening.width / 2 + dx) value = Math.max(value, beyond);
    }
    return value;
  };
}

/** Squares of this many cells are tested first; one that is clear of every wall needs no closer test. */
const BLOCK = 8;

function fill({ left, bottom, dx, nx, ny, value }: Mesh, distance: Distance): void {
  // Half a diagonal, with room for tapering tubes, whose distance falls a little faster than one mm a mm.
  const clear = 0.8 * BLOCK * dx;
  for (let j = 0; j < ny; j += BLOCK) {
    for (let i = 0; i < nx; i += BLOCK) {
      const middle = distance(left + (i + (BLOCK - 1) / 2) * dx, bottom + (j + (BLOCK - 1) / 2) * dx);
      for (let b = j; b < Math.min(ny, j + BLOCK); b++) {
        for (let a = i; a < Math.min(nx, i + BLOCK); a++) {
          value[b * nx + a] = Math.abs(middle) > clear ? middle : distance(left + a * dx, bottom + b * dx);
        }
      }
    }
  }
}

function openingOf(geometry: FlowGeometry, dx: number, from: Point, to: Point): string | null {
  const on = ({ centre, normal, width }: Opening, [x, y]: Point) => {
    const { beyond, across } = seenFrom({ name: "", centre, normal, width }, x, y);
    return Math.abs(beyond) < 0.25 * dx && Math.abs(across) < width / 2 + 0.25 * dx;
  };
  return geometry.openings.find((opening) => on(opening, from) && on(opening, to))?.name ?? null;
}

interface Mesh {
  readonly left: number;
  readonly bottom: number;
  readonly dx: number;
  readonly nx: number;
  readonly ny: number;
  /** mm, [ny*nx] at the mesh's corners */
  readonly value: Float64Array;
}

/**
 * Edges of a square, anticlockwise from the bottom: 0 bottom, 1 right, 2 top, 3 left. For each of the 16 ways in which its corners
 * (bit 0 lower left, then anticlockwise) lie in the blood: pieces from edge to edge with the blood on the left.
 */
const PIECES: readonly (readonly (readonly [number, number])[])[] = [
  [],
  [[0, 3]],
  [[1, 0]],
  [[1, 3]],
  [[2, 1]],
  [
    [0, 3],
    [2, 1],
  ],
  [[2, 0]],
  [[2, 3]],
  [[3, 2]],
  [[0, 2]],
  [
    [1, 0],
    [3, 2],
  ],
  [[1, 2]],
  [[3, 1]],
  [[0, 1]],
  [[3, 0]],
  [],
];

function loops(mesh: Mesh): Point[][] {
  const { nx, ny, value } = mesh;
  // Each crossed mesh edge by number: 2k for the one to the right of corner k, 2k + 1 for the one above it.
  const next = new Map<number, number>();
  for (let j = 0; j < ny - 1; j++) {
    for (let i = 0; i < nx - 1; i++) {
      const k = j * nx + i;
      const corners =
        (entryAt(value, k) < 0 ? 1 : 0) |
        (entryAt(value, k + 1) < 0 ? 2 : 0) |
        (entryAt(value, k + nx + 1) < 0 ? 4 : 0) |
        (entryAt(value, k + nx) < 0 ? 8 : 0);
      const edges = [2 * k, 2 * (k + 1) + 1, 2 * (k + nx), 2 * k + 1];
      for (const [from, to] of entryAt(PIECES, corners)) next.set(entryAt(edges, from), entryAt(edges, to));
    }
  }
  const found: Point[][] = [];
  for (const start of next.keys()) {
    if (!next.has(start)) continue;
    const points: Point[] = [];
    let edge: number | undefined = start;
    while (edge !== undefined && next.has(edge)) {
      const onward: number = present(next.get(edge));
      next.delete(edge);
      points.push(crossing(mesh, edge));
      edge = onward;
    }
    if (points.length > 3) found.push(points);
  }
  return found;
}

function crossing({ nx, left, bottom, dx, value }: Mesh, edge: number): Point {
  const k = edge >> 1;
  const upwards = edge & 1;
  const from = entryAt(value, k);
  const to = entryAt(value, k + (upwards ? nx : 1));
  const t = from / (from - to);
  const i = k % nx;
  const j = (k - i) / nx;
  return upwards ? [left + i * dx, bottom + (j + t) * dx] : [left + (i + t) * dx, bottom + j * dx];
}
