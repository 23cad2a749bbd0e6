/** How wide a lumen is at each of its cells, from the signed distance alone: polygons, and lumens in which a solid stands. */

import { entryAt } from "../checked/present.ts";
import type { DepthGrid } from "./depth-grid.ts";
import type { Distance } from "./distance.ts";

/** Growth of inscribed circles along a branch beyond which it is a corner and not a lumen (a wedge of 66 degrees). */
const CORNER = 0.55;
/** Growth up to which the walls count as parallel: such a lumen keeps its width up to where it opens into a wider one. */
const PARALLEL = 0.04;
/** Directions in which the growth of the inscribed circle is tried. */
const DIRECTIONS = 64;

/** An inscribed circle, mm. */
interface Circle {
  readonly x: number;
  readonly y: number;
  readonly radius: number;
}

/**
 * Width (mm) of the lumen at each cell, 0 outside, [ny*nx]: between parallel walls their distance; elsewhere the diameter of the
 * largest inscribed circle that contains the cell (Hildebrand & Rueegsegger, J Microsc 185:67, 1997); corners as the lumen beside them.
 * Circles are centred where they are largest, not on cells, so that the width does not depend on where the grid lines fall.
 * @param gap signed distance, mm
 * @param distance mm [ny*nx]: `gap` at the cell centres
 */
export function localThickness(grid: DepthGrid, gap: Distance, distance: Float64Array): Float64Array {
  const { nx, ny, dx, originX, originY } = grid;
  const widest = new Float64Array(nx * ny);
  const own = new Float64Array(nx * ny);
  const around = [-1, 1, -nx, nx, -nx - 1, -nx + 1, nx - 1, nx + 1];
  for (let j = 1; j < ny - 1; j++)
    for (let i = 1; i < nx - 1; i++) {
      const k = j * nx + i;
      const radius = -entryAt(distance, k);
      if (radius <= 0) continue;
      const apart = (n: number) => (n < 4 ? dx : Math.SQRT2 * dx);
      if (around.some((step, n) => -entryAt(distance, k + step) >= radius + CORNER * apart(n))) continue;
      const circle = largestNear(gap, originX + i * dx, originY + j * dx, dx);
      visit(grid, circle, circle.radius + 0.75 * dx, (at, x, y) => {
        if (Math.hypot(x, y) <= circle.radius + 0.75 * dx)
          widest[at] = Math.max(entryAt(widest, at), 2 * circle.radius);
      });
      const { growth, along } = growthAt(gap, circle, 1.5 * dx);
      if (growth > PARALLEL) continue;
      const [tx, ty] = along;
      visit(grid, circle, circle.radius + 1.5 * dx, (at, x, y) => {
        if (Math.abs(x * tx + y * ty) <= 0.75 * dx && Math.abs(x * ty - y * tx) <= circle.radius + dx)
          own[at] = Math.max(entryAt(own, at), 2 * circle.radius);
      });
    }
  const thickness = widest.map((value, k) => (entryAt(own, k) > 0 ? entryAt(own, k) : value));
  fillFromNeighbours(grid, distance, thickness);
  return thickness;
}

/** The largest inscribed circle whose centre lies within half a cell of (x, y). */
function largestNear(gap: Distance, x: number, y: number, dx: number): Circle {
  let best: Circle = { x, y, radius: -gap(x, y) };
  for (let step = 0.25 * dx; step > 0.002 * dx; ) {
    const from = best;
    for (const [a, b] of EIGHT) {
      const cx = from.x + a * step;
      const cy = from.y + b * step;
      if (Math.abs(cx - x) > 0.5 * dx || Math.abs(cy - y) > 0.5 * dx) continue;
      const radius = -gap(cx, cy);
      if (radius > best.radius) best = { x: cx, y: cy, radius };
    }
    if (best === from) step *= 0.5;
  }
  return best;
}

const EIGHT = [
  [-1, 0],
  [1, 0],
  [0, -1],
  [0, 1],
  [-1, -1],
  [-1, 1],
  [1, -1],
  [1, 1],
] as const;

/** Steepest growth of the radius over `reach`, and its direction: along the lumen, when its walls are parallel. */
function growthAt(gap: Distance, { x, y, radius }: Circle, reach: number) {
  let most = -Infinity;
  let along: readonly [number, number] = [1, 0];
  for (let n = 0; n < DIRECTIONS; n++) {
    const angle = (2 * Math.PI * n) / DIRECTIONS;
    const direction = [Math.cos(angle), Math.sin(angle)] as const;
    const there = -gap(x + reach * direction[0], y + reach * direction[1]);
    if (there > most) {
      most = there;
      along = direction;
    }
  }
  return { growth: (most - radius) / reach, along };
}

/** Calls back for each cell of the square about a circle, with its position relative to the centre. */
function visit(
  { nx, ny, dx, originX, originY }: DepthGrid,
  { x, y }: Circle,
  reach: number,
  call: (k: number, x: number, y: number) => void,
): void {
  const i = (x - originX) / dx;
  const j = (y - originY) / dx;
  const span = reach / dx;
  for (let b = Math.max(0, Math.ceil(j - span)); b <= Math.min(ny - 1, j + span); b++)
    for (let a = Math.max(0, Math.ceil(i - span)); a <= Math.min(nx - 1, i + span); a++)
      call(b * nx + a, (a - i) * dx, (b - j) * dx);
}

/** Cells of the lumen that no circle covers take the value of the nearest that one does. */
function fillFromNeighbours({ nx, ny, dx }: DepthGrid, distance: Float64Array, values: Float64Array): void {
  const queue: number[] = [];
  values.forEach((value, k) => {
    if (value > 0) queue.push(k);
  });
  for (let n = 0; n < queue.length; n++) {
    const k = entryAt(queue, n);
    for (const next of [k - 1, k + 1, k - nx, k + nx]) {
      if (next < 0 || next >= nx * ny || entryAt(values, next) > 0 || entryAt(distance, next) > dx) continue;
      values[next] = entryAt(values, k);
      queue.push(next);
    }
  }
}
