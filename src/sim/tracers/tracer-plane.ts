/** The plane as tracers need it: where the wall is, and which cells lie near an opening. */
import { bilinear } from "../flow-field/bilinear.ts";
import type { FieldShape } from "../flow-field/flow-field.ts";
import type { Opening } from "../geometry/geometry.ts";

/** The plane as tracers need it; lengths in mm. */
export interface TracerPlane {
  readonly shape: FieldShape;
  readonly openings: readonly Opening[];
  /** [ny*nx] number of the opening (from 1) whose cut lies within the cell's reach, 0 elsewhere */
  readonly near: Uint8Array;
  /** [number of openings * 5] centre x, y (mm), normal x, y, half width (mm) */
  readonly cuts: Float64Array;
  /** [ny*nx][2] u, v in cells/s at the moment of the step under way */
  readonly velocity: Float32Array;
  /** mm: greatest depth in the blood */
  readonly deepest: number;
  /** mm3 of blood this side of all cuts */
  readonly volume: number;
  /** [number of openings] tracers that each has yet to let in, fractions of one */
  readonly owed: Float64Array;
  /** [PLACES] sums of the flow across the cut that was read last, mm3/s */
  readonly across: Float64Array;
}

/** Places across a cut at which the flow through it is read. */
export const PLACES = 24;
/** Cells from the wall within which no tracer is set. */
export const MARGIN = 0.25;
/** Cells by which a tracer may move between two looks at where it is. */
export const STRIDE = 2;

/** Lays the plane out for tracers; lengths in mm, velocity in cells per s. */
export function tracerPlane(shape: FieldShape, openings: readonly Opening[]): TracerPlane {
  const { nx, ny, dx, originX, originY } = shape;
  const near = new Uint8Array(nx * ny);
  const cuts = new Float64Array(openings.length * 5);
  const reach = (STRIDE + 1) * dx;
  openings.forEach(({ centre, normal, width }, n) => {
    cuts.set([centre[0], centre[1], normal[0], normal[1], width / 2], n * 5);
    const span = width / 2 + reach;
    const from = (middle: number, origin: number) => Math.max(0, Math.floor((middle - span - origin) / dx));
    const to = (middle: number, origin: number, count: number) =>
      Math.min(count - 1, Math.ceil((middle + span - origin) / dx));
    for (let j = from(centre[1], originY); j <= to(centre[1], originY, ny); j++) {
      for (let i = from(centre[0], originX); i <= to(centre[0], originX, nx); i++) {
        const deltaX = originX + i * dx - centre[0];
        const deltaY = originY + j * dx - centre[1];
        const beyond = deltaX * normal[0] + deltaY * normal[1];
        const across = deltaY * normal[0] - deltaX * normal[1];
        if (Math.abs(across) <= span && beyond > -reach) near[j * nx + i] = n + 1;
      }
    }
  });
  let deepest = 0;
  let volume = 0;
  const cut = { shape, near, cuts };
  for (let k = 0; k < nx * ny; k++) {
    if (shape.distance[k]! >= 0) continue;
    deepest = Math.max(deepest, shape.depth[k]!);
    if (!beyondCut(cut, originX + (k % nx) * dx, originY + Math.floor(k / nx) * dx))
      volume += shape.depth[k]! * dx * dx;
  }
  return {
    ...cut,
    openings,
    deepest,
    volume,
    velocity: new Float32Array(2 * nx * ny),
    owed: new Float64Array(openings.length),
    across: new Float64Array(PLACES),
  };
}

/** Whether a place (mm) lies beyond the cut of an opening near it. */
export function beyondCut(
  { shape, near, cuts }: Pick<TracerPlane, "shape" | "near" | "cuts">,
  x: number,
  y: number,
): boolean {
  const i = Math.round((x - shape.originX) / shape.dx);
  const j = Math.round((y - shape.originY) / shape.dx);
  const c = 5 * (near[j * shape.nx + i]! - 1);
  return c >= 0 && (x - cuts[c]!) * cuts[c + 2]! + (y - cuts[c + 1]!) * cuts[c + 3]! > 0;
}

/** mm, negative in the blood; beyond the grid counts as wall. */
export function distanceAt(
  { distance, nx, ny, dx, originX, originY }: FieldShape,
  x: number,
  y: number,
): number {
  const gx = (x - originX) / dx;
  const gy = (y - originY) / dx;
  if (!(gx >= 0 && gy >= 0 && gx < nx - 1 && gy < ny - 1)) return dx;
  return bilinear(distance, nx, gx, gy);
}

/** mm of depth at the nearest cell. */
export const depthAt = ({ depth, nx, dx, originX, originY }: FieldShape, x: number, y: number): number =>
  depth[Math.round((y - originY) / dx) * nx + Math.round((x - originX) / dx)] ?? 0;
