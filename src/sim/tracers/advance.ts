/**
 * The hot loop: every tracer follows the flow by the midpoint rule, in strides of at most {@link STRIDE} cells, in a field that is
 * interpolated between two moments. Nothing is allocated. A step that would end in a wall is set back along the wall's normal.
 */
import type { RandomSource } from "../random.ts";
import { type Blend, mix, sample, sampled } from "./blended-flow.ts";
import { admit, type Supply } from "./inflow.ts";
import { layTrails, remove, type TracerCloud } from "./tracer-cloud.ts";
import { STRIDE, type TracerPlane } from "./tracer-plane.ts";

/** One step of all tracers. */
export interface Step extends Blend {
  /** s of blood time */
  readonly seconds: number;
  readonly supply: Supply;
}

/** Cells from the wall at which a tracer is held. */
const HELD_AT = 0.2;
/** Most strides a tracer makes in one step; at 60 frames a second none needs as many. */
const MAX_STRIDES = 400;

/** Tracer `n` leaves by opening number `opening`, `across` mm from its middle, with `left` s of the step to go. */
type Leave = (n: number, opening: number, across: number, left: number) => void;

/**
 * Moves all tracers by `step.seconds` (s); those that leave are dropped, and others enter with the blood that comes in, at evenly spread moments.
 * Positions in mm, speeds in m/s.
 * @param leave called with the tracer's number, the opening's number, mm across it from its middle, and s of the step that are left
 */
export function advance(
  cloud: TracerCloud,
  plane: TracerPlane,
  step: Step,
  random: RandomSource,
  leave?: Leave,
): void {
  const { seconds, supply } = step;
  mix(plane, step);
  layTrails(cloud, seconds);
  for (let n = cloud.count - 1; n >= 0; n--) if (!stays(cloud, plane, n, seconds, leave)) remove(cloud, n);
  // It enters at a random moment of the step, so that no bands of tracers form at an inlet.
  admit(cloud, plane, { seconds, supply, random }, (n) => {
    if (!stays(cloud, plane, n, seconds * random(), leave)) remove(cloud, n);
  });
  cloud.sincePulse += seconds;
}

/** Moves one tracer; false when it has left. */
function stays(
  { position, age, speed }: TracerCloud,
  { shape, near, cuts, velocity }: TracerPlane,
  n: number,
  seconds: number,
  leave?: Leave,
): boolean {
  const { nx, ny, dx, originX, originY, distance } = shape;
  const right = nx - 1.001;
  const top = ny - 1.001;
  // All in cells from the centre of cell (0,0).
  let x = (position[2 * n]! - originX) / dx;
  let y = (position[2 * n + 1]! - originY) / dx;
  let left = seconds;
  let fast = 0;
  age[n]! += seconds;
  for (let strides = 0; left > 0 && strides < MAX_STRIDES; strides++) {
    sample(velocity, nx, x, y);
    const u = sampled[0]!;
    const v = sampled[1]!;
    fast = Math.sqrt(u * u + v * v);
    const h = fast * left > STRIDE ? STRIDE / fast : left;
    sample(velocity, nx, within(x + 0.5 * h * u, right), within(y + 0.5 * h * v, top));
    let nextX = within(x + h * sampled[0]!, right);
    let nextY = within(y + h * sampled[1]!, top);
    left -= h;

    const k = ((nextY + 0.5) | 0) * nx + ((nextX + 0.5) | 0);
    const c = 5 * (near[k]! - 1);
    if (c >= 0) {
      const deltaX = originX + nextX * dx - cuts[c]!;
      const deltaY = originY + nextY * dx - cuts[c + 1]!;
      if (deltaX * cuts[c + 2]! + deltaY * cuts[c + 3]! > 0) {
        leave?.(n, c / 5, deltaY * cuts[c + 2]! - deltaX * cuts[c + 3]!, left);
        return false;
      }
    }
    // Near a wall: push it back along the wall's normal; where that fails it stays where it was.
    if (distance[k]! > -1.5 * dx) {
      const off = held(distance, nx, nextX, nextY, dx);
      if (off === 2) continue;
      if (off === 1) {
        nextX = pushed[0]!;
        nextY = pushed[1]!;
      }
    }
    x = nextX;
    y = nextY;
  }
  position[2 * n] = originX + x * dx;
  position[2 * n + 1] = originY + y * dx;
  speed[n] = fast * dx * 1e-3;
  return true;
}

const within = (value: number, most: number): number => Math.max(0, Math.min(value, most));

/** Place (cells) to which `held` has pushed */
const pushed = new Float64Array(2);

/** 0 when the place is clear of the wall; 1 when `pushed` holds a clear place near it; 2 when no such place was found. */
function held(distance: Float32Array, nx: number, gx: number, gy: number, dx: number): number {
  let x = gx;
  let y = gy;
  for (let attempt = 0; attempt < 3; attempt++) {
    const i = x | 0;
    const j = y | 0;
    const s = x - i;
    const t = y - j;
    const k = j * nx + i;
    const a = distance[k]!;
    const b = distance[k + 1]!;
    const c = distance[k + nx]!;
    const d = distance[k + nx + 1]!;
    const excess = ((1 - t) * ((1 - s) * a + s * b) + t * ((1 - s) * c + s * d)) / dx + HELD_AT;
    if (excess <= 1e-6) {
      pushed[0] = x;
      pushed[1] = y;
      return attempt === 0 ? 0 : 1;
    }
    const slopeX = (1 - t) * (b - a) + t * (d - c);
    const slopeY = (1 - s) * (c - a) + s * (d - b);
    const steep = (slopeX * slopeX + slopeY * slopeY) / dx || 1;
    x -= (excess * slopeX) / steep;
    y -= (excess * slopeY) / steep;
  }
  return 2;
}
