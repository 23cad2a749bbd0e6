/**
 * Local depth of the plane: h = pi D/4, so that width times depth is the area of a round lumen of diameter D.
 * D is the tube's own width, a disc's diameter, an ellipse's smaller diameter or a polygon's local thickness; the widest of the
 * open shapes that contain the point; less where there is a solid in the lumen.
 */

import { entryAt } from "../checked/present.ts";
import type { DepthGrid } from "./depth-grid.ts";
import { planeDistance, shapeBounds, shapeDistance, type TubePoint, tubePoints } from "./distance.ts";
import type { FlowGeometry, Shape } from "./geometry.ts";
import { localThickness } from "./thickness.ts";

/** Depth of the plane in each cell, mm. */
export interface LocalDepth {
  /** mm, [ny*nx] */
  readonly depth: Float64Array;
  /** mm, [ny*nx]: depth of the narrow side from which a step widens; equals `depth` where nothing steps */
  readonly narrow: Float64Array;
}

/** Greatest growth of depth from cell to cell: a step is spread over a few cells on its wide side, never into the narrow one. */
const DEPTH_GROWTH = 1.3;

/** Depth 1 in every cell, [ny*nx]: it is stored as mm and read as one metre, so that answers are per metre of depth. */
export function uniformDepth(grid: DepthGrid): LocalDepth {
  const depth = new Float64Array(grid.nx * grid.ny).fill(1);
  return { depth, narrow: depth };
}

/**
 * Depth pi D/4 (mm) of round lumens, [ny*nx].
 * @param distance mm [ny*nx]: the plane's signed distance at the cell centres
 */
export function roundDepth(geometry: FlowGeometry, grid: DepthGrid, distance: Float64Array): LocalDepth {
  const diameter = ownDiameter(geometry, grid, distance);
  if (geometry.solid.length > 0) narrowBySolids(geometry, grid, distance, diameter);
  fillOutside(geometry, grid, distance, diameter);
  const depth = diameter.map((width) => (Math.PI / 4) * width);
  return spreadSteps(grid, distance, depth);
}

function ownDiameter(geometry: FlowGeometry, grid: DepthGrid, distance: Float64Array): Float64Array {
  const { nx, ny, dx, originX, originY } = grid;
  const shapes = geometry.open.map((shape) => diameterOf(shape, grid));
  const diameter = new Float64Array(nx * ny);
  for (let j = 0; j < ny; j++)
    for (let i = 0; i < nx; i++) {
      const k = j * nx + i;
      // Cells cut by the wall count: their centre may lie just outside every shape.
      if (entryAt(distance, k) > dx) continue;
      const x = originX + i * dx;
      const y = originY + j * dx;
      let widest = 0;
      let nearest = Infinity;
      let near = 0;
      for (const shape of shapes) {
        const { distance: gap, width } = shape(x, y, k);
        if (gap <= 0) widest = Math.max(widest, width);
        if (gap < nearest) {
          nearest = gap;
          near = width;
        }
      }
      diameter[k] = widest > 0 ? widest : near;
    }
  return diameter;
}

/** Distance and own diameter of one shape at a point (mm). */
function diameterOf(shape: Shape, grid: DepthGrid): (x: number, y: number, k: number) => TubePoint {
  const out: TubePoint = { distance: 0, width: 0 };
  if ("tube" in shape) {
    const at = tubePoints(shape.tube);
    return (x, y) => at(x, y, out);
  }
  const gap = shapeDistance(shape);
  let width: (k: number) => number;
  if ("disc" in shape) width = () => 2 * shape.disc.radius;
  else if ("ellipse" in shape) width = () => 2 * Math.min(...shape.ellipse.radii);
  else {
    const own = localThickness(grid, gap, gridDistance(grid, gap, shapeBounds(shape)));
    width = (k) => entryAt(own, k);
  }
  return (x, y, k) => {
    out.distance = gap(x, y);
    out.width = width(k);
    return out;
  };
}

/** `gap` at the cell centres; endless well outside `box` (mm: left, bottom, right, top), in which all that is negative lies. */
function gridDistance(
  grid: DepthGrid,
  gap: (x: number, y: number) => number,
  [left, bottom, right, top]: readonly [number, number, number, number],
): Float64Array {
  const { nx, ny, dx, originX, originY } = grid;
  const out = new Float64Array(nx * ny).fill(Number.POSITIVE_INFINITY);
  const reach = 3 * dx;
  for (let j = 0, k = 0; j < ny; j++) {
    const y = originY + j * dx;
    const beside = y < bottom - reach || y > top + reach;
    for (let i = 0; i < nx; i++, k++) {
      const x = originX + i * dx;
      if (!beside && x >= left - reach && x <= right + reach) out[k] = gap(x, y);
    }
  }
  return out;
}
const EVERYWHERE = [-Infinity, -Infinity, Infinity, Infinity] as const;

/** A solid that halves the inscribed width halves the diameter with it. */
function narrowBySolids(
  geometry: FlowGeometry,
  grid: DepthGrid,
  distance: Float64Array,
  diameter: Float64Array,
): void {
  const reach = 4 * grid.dx;
  const bare = planeDistance({ ...geometry, solid: [] }, reach);
  const before = localThickness(grid, bare, gridDistance(grid, bare, EVERYWHERE));
  const after = localThickness(grid, planeDistance(geometry, reach), distance);
  for (let k = 0; k < diameter.length; k++)
    if (entryAt(before, k) > 0 && entryAt(after, k) > 0)
      diameter[k] = entryAt(diameter, k) * Math.min(1, entryAt(after, k) / entryAt(before, k));
}

/** Beyond an opening the diameter just inside it continues. */
function fillOutside(
  geometry: FlowGeometry,
  grid: DepthGrid,
  distance: Float64Array,
  diameter: Float64Array,
): void {
  const { nx, ny, dx, originX, originY } = grid;
  for (let j = 0; j < ny; j++)
    for (let i = 0; i < nx; i++) {
      const k = j * nx + i;
      if (entryAt(distance, k) > dx) continue;
      const x = originX + i * dx;
      const y = originY + j * dx;
      for (const { centre, normal, width } of geometry.openings) {
        const beyond = (x - centre[0]) * normal[0] + (y - centre[1]) * normal[1];
        const across = (y - centre[1]) * normal[0] - (x - centre[0]) * normal[1];
        if (beyond > 0 && beyond < width + 12 * dx && Math.abs(across) < 0.5 * width + dx)
          diameter[k] = width;
      }
    }
}

/** Lower envelope that grows by at most {@link DEPTH_GROWTH} per cell; keeps the depth from which each lowered cell grew. */
function spreadSteps(grid: DepthGrid, distance: Float64Array, sharp: Float64Array): LocalDepth {
  const { nx, ny, dx } = grid;
  const depth = sharp.slice();
  const narrow = sharp.slice();
  const diagonal = DEPTH_GROWTH ** Math.SQRT2;
  const beside = [-1, 1, -nx, nx];
  const across = [-nx - 1, -nx + 1, nx - 1, nx + 1];
  const lower = (k: number, from: number, growth: number): boolean => {
    if (entryAt(distance, from) > 0.5 * dx || depth[from] === 0) return false;
    const bound = entryAt(depth, from) * growth;
    if (bound >= entryAt(depth, k) * 0.999999) return false;
    depth[k] = bound;
    narrow[k] = entryAt(narrow, from);
    return true;
  };
  for (let pass = 0, changed = true; changed && pass < 12; pass++) {
    changed = false;
    const forward = pass % 2 === 0;
    const count = nx * ny;
    for (let n = nx + 1; n < count - nx - 1; n++) {
      const k = forward ? n : count - 1 - n;
      if (entryAt(distance, k) > dx) continue;
      for (const step of beside) if (lower(k, k + step, DEPTH_GROWTH)) changed = true;
      for (const step of across) if (lower(k, k + step, diagonal)) changed = true;
    }
  }
  return { depth, narrow };
}
