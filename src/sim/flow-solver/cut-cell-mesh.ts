/** Which part of each cell of a square grid is blood: face openings, cell areas, depth, and which cells are beyond an opening. */
import { type LocalDepth, roundDepth, uniformDepth } from "../geometry/depth.ts";
import type { DepthGrid } from "../geometry/depth-grid.ts";
import { planeDistance, shapeBounds } from "../geometry/distance.ts";
import type { FlowGeometry, Opening } from "../geometry/geometry.ts";

/** Empty cells around the blood, so that no stencil leaves the arrays. */
const MARGIN = 3;
/** Length in cells of the channel beyond an opening: enough for the stencil of the last solved face. */
const CHANNEL = 4;

/** The grid over a plane, after Ingram, Causon & Mingham (2003). Arrays [ny*nx], row-major from the bottom row. */
export interface CutCellMesh extends LocalDepth {
  /** cells; nx is a multiple of four so that rows stay aligned for vectors */
  readonly nx: number;
  readonly ny: number;
  /** mm: cell width, centre of cell (0,0) */
  readonly dx: number;
  readonly originX: number;
  readonly originY: number;
  /** mm [ny*nx]: signed distance from the wall at cell centres, negative in the blood; far outside a lower bound of it */
  readonly distance: Float64Array;
  /** mm [ny*nx]: the same at the lower left corner of each cell; far from the wall the value at its centre */
  readonly corner: Float64Array;
  /** 0..1 [ny*nx]: open part of the west face, of the south face, and of the cell's area */
  readonly west: Float64Array;
  readonly south: Float64Array;
  readonly area: Float64Array;
  /** [ny*nx] index of the opening beyond which a cell is, or -1 */
  readonly beyond: Int16Array;
}

/** Cells from the wall within which corners are looked at for themselves; farther away they lie on the same side as their cell. */
const NEAR = 4;
/** Part of a distance outside the blood within which no blood is, whatever shapes say where they taper or are cut; and cells that are kept from it. */
const CLEAR = 0.5;
const KEPT = 2;

/** Cell width, and how deep the plane is: 1 everywhere, or as round lumens. */
export interface GridChoice {
  /** mm */
  readonly dx: number;
  readonly depth: "uniform" | "round";
}

/** Puts the grid (cell width dx in mm) over the blood; its lines pass through the first openings' planes. */
export function buildMesh(geometry: FlowGeometry, choice: GridChoice): CutCellMesh {
  const laying = layMesh(geometry, choice);
  for (;;) {
    const { done, value } = laying.next();
    if (done) return value;
  }
}

/** The same a row at a time, for whoever has other things to do in between. */
export function* layMesh(
  geometry: FlowGeometry,
  { dx, depth }: GridChoice,
): Generator<undefined, CutCellMesh> {
  const [left, bottom, right, top] = bounds(geometry, dx);
  const nx = 4 * Math.ceil((Math.ceil((right - left) / dx - 1e-6) + 2 * MARGIN) / 4);
  const ny = Math.ceil((top - bottom) / dx - 1e-6) + 2 * MARGIN;
  const originX = left + (0.5 - MARGIN) * dx;
  const originY = bottom + (0.5 - MARGIN) * dx;
  const gap = planeDistance(geometry, CHANNEL * dx);
  const count = nx * ny;
  const distance = new Float64Array(count);
  const corner = new Float64Array(count);
  const beyond = new Int16Array(count).fill(-1);
  const grid = { nx, ny, dx, originX, originY };
  const cut = nearOpening(geometry, 2 * CHANNEL * dx);
  for (let j = 0; j < ny; j++) {
    let clear = 0;
    const y = originY + j * dx;
    for (let k = j * nx, x = originX; k < (j + 1) * nx; k++, x = originX + (k - j * nx) * dx) {
      const here = clear > 0 ? distance[k - 1]! - dx : gap(x, y);
      if (clear > 0) clear--;
      else if (here > 0) clear = Math.max(0, Math.floor((CLEAR * here) / dx) - KEPT);
      distance[k] = here;
      // Where a shape's distance jumps one of the four cells around may still be near; where an opening cuts it, none.
      const least = Math.min(
        Math.abs(here),
        Math.abs(distance[k - 1] ?? here),
        Math.abs(distance[k - nx] ?? here),
        Math.abs(distance[k - nx - 1] ?? here),
      );
      corner[k] = least < NEAR * dx || cut(x, y) ? gap(x - 0.5 * dx, y - 0.5 * dx) : here;
    }
    yield;
  }
  geometry.openings.forEach((opening, n) => {
    markBeyond(grid, opening, n, beyond);
  });
  // A wall that passes through a corner to within rounding must not open a sliver.
  for (let k = 0; k < count; k++) if (Math.abs(corner[k]!) < 1e-7 * dx) corner[k] = 0;
  const faces = openFaces(nx, ny, corner);
  closeSlivers(nx, ny, beyond, faces);
  yield;
  const local = depth === "round" ? roundDepth(geometry, grid, distance) : uniformDepth(grid);
  yield;
  return { ...grid, distance, corner, beyond, ...faces, ...local };
}

/** Whether a point (mm) lies within an opening's width, and `more` mm, of its middle. */
function nearOpening({ openings }: FlowGeometry, more: number): (x: number, y: number) => boolean {
  const discs = openings.map(({ centre: [x, y], width }) => ({ x, y, radius2: (width + more) ** 2 }));
  return (x, y) => {
    for (const disc of discs) if ((x - disc.x) ** 2 + (y - disc.y) ** 2 < disc.radius2) return true;
    return false;
  };
}

/** Marks the cells beyond the `n`th opening. */
function markBeyond(
  { nx, ny, dx, originX, originY }: DepthGrid,
  opening: Opening,
  n: number,
  beyond: Int16Array,
) {
  const [normalX, normalY] = opening.normal;
  for (let k = 0; k < nx * ny; k++) {
    const x = originX + (k % nx) * dx - opening.centre[0];
    const y = originY + Math.floor(k / nx) * dx - opening.centre[1];
    const out = x * normalX + y * normalY;
    // Distances are rounded: a cell centre exactly on the plane counts as inside.
    if (out <= 1e-9 * dx || out > (CHANNEL + 1) * dx) continue;
    if (Math.abs(y * normalX - x * normalY) <= 0.5 * opening.width + dx) beyond[k] = n;
  }
}

function bounds(geometry: FlowGeometry, dx: number): [number, number, number, number] {
  const boxes = geometry.open.map(shapeBounds);
  let left = Math.min(...boxes.map((box) => box[0]));
  let bottom = Math.min(...boxes.map((box) => box[1]));
  let right = Math.max(...boxes.map((box) => box[2]));
  let top = Math.max(...boxes.map((box) => box[3]));
  const reach = (CHANNEL + 1) * dx;
  for (const { centre, normal, width } of geometry.openings) {
    // An opening that looks along an axis at the edge of the blood cuts the round end off the picture.
    const half = 0.5 * width;
    const [x, y] = centre;
    if (normal[0] > 0.999 && right <= x + 1.2 * half) right = x;
    if (normal[0] < -0.999 && left >= x - 1.2 * half) left = x;
    if (normal[1] > 0.999 && top <= y + 1.2 * half) top = y;
    if (normal[1] < -0.999 && bottom >= y - 1.2 * half) bottom = y;
  }
  for (const { centre, normal, width } of geometry.openings) {
    const spanX = Math.abs(normal[1]) * 0.5 * width;
    const spanY = Math.abs(normal[0]) * 0.5 * width;
    left = Math.min(left, centre[0] - spanX + Math.min(0, normal[0] * reach));
    right = Math.max(right, centre[0] + spanX + Math.max(0, normal[0] * reach));
    bottom = Math.min(bottom, centre[1] - spanY + Math.min(0, normal[1] * reach));
    top = Math.max(top, centre[1] + spanY + Math.max(0, normal[1] * reach));
  }
  // Grid lines lie on the planes of the first openings that look along the axes.
  const anchor = (axis: 0 | 1) =>
    geometry.openings.find(({ normal }) => Math.abs(normal[axis]) > 0.999)?.centre[axis] ?? 0;
  const down = (value: number, line: number) => line + Math.floor((value - line) / dx + 1e-6) * dx;
  return [down(left, anchor(0)), down(bottom, anchor(1)), right, top];
}

/** Open fraction of an edge between two corners, the wall crossing it where linear interpolation gives 0. */
const openPart = (a: number, b: number): number =>
  a <= 0 && b <= 0 ? (a === 0 && b === 0 ? 0 : 1) : a >= 0 && b >= 0 ? 0 : a < 0 ? a / (a - b) : b / (b - a);

function openFaces(nx: number, ny: number, corner: Float64Array) {
  const count = nx * ny;
  const west = new Float64Array(count);
  const south = new Float64Array(count);
  const area = new Float64Array(count);
  for (let j = 0; j < ny - 1; j++)
    for (let i = 0; i < nx - 1; i++) {
      const k = j * nx + i;
      west[k] = openPart(corner[k]!, corner[k + nx]!);
      south[k] = openPart(corner[k]!, corner[k + 1]!);
    }
  for (let j = 0; j < ny - 1; j++)
    for (let i = 0; i < nx - 1; i++) {
      const k = j * nx + i;
      area[k] = openArea([corner[k]!, corner[k + 1]!, corner[k + nx + 1]!, corner[k + nx]!]);
    }
  return { west, south, area };
}

/** Open fraction below which a face across an opening counts as wall: continuity is not solved beyond it, so blood would race through a slit. */
const SLIVER = 0.3;

function closeSlivers(
  nx: number,
  ny: number,
  beyond: Int16Array,
  { west, south }: { west: Float64Array; south: Float64Array },
): void {
  for (let k = nx; k < nx * ny; k++) {
    if (beyond[k]! < 0 !== beyond[k - 1]! < 0 && west[k]! < SLIVER) west[k] = 0;
    if (beyond[k]! < 0 !== beyond[k - nx]! < 0 && south[k]! < SLIVER) south[k] = 0;
  }
}

/** Area of the unit square's part where the corner values (anticlockwise) interpolated along its edges are negative. */
function openArea(values: readonly [number, number, number, number]): number {
  const at = [
    [0, 0],
    [1, 0],
    [1, 1],
    [0, 1],
  ] as const;
  let twice = 0;
  let firstX = 0;
  let firstY = 0;
  let lastX = 0;
  let lastY = 0;
  let started = false;
  const visit = (x: number, y: number): void => {
    if (started) twice += lastX * y - x * lastY;
    else [firstX, firstY, started] = [x, y, true];
    lastX = x;
    lastY = y;
  };
  for (let n = 0; n < 4; n++) {
    const a = values[n]!;
    const b = values[(n + 1) % 4]!;
    const [ax, ay] = at[n]!;
    const [bx, by] = at[(n + 1) % 4]!;
    if (a < 0) visit(ax, ay);
    if (a < 0 !== b < 0) {
      const t = a / (a - b);
      visit(ax + t * (bx - ax), ay + t * (by - ay));
    }
  }
  if (started) twice += lastX * firstY - firstX * lastY;
  return Math.max(0, 0.5 * twice);
}
