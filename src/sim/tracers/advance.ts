/**
 * The hot loop: every tracer follows the flow by the midpoint rule, in strides of at most {@link STRIDE} cells, in a field that is
 * interpolated between two moments. Nothing is allocated. A step that would end in a wall is set back along the wall's normal.
 */
import type { FlowField } from "../flow-field/flow-field.ts";
import type { RandomSource } from "../random.ts";
import { enter, entrance, type Supply } from "./release.ts";
import { layTrails, type TracerCloud } from "./tracer-cloud.ts";
import { STRIDE, type TracerPlane } from "./tracer-plane.ts";

/** One step of all tracers. */
export interface Step {
  readonly from: FlowField;
  readonly to: FlowField;
  /** fraction: 0 = `from`, 1 = `to` */
  readonly blend: number;
  /** s of blood time */
  readonly seconds: number;
  readonly supply: Supply;
}

/** Cells from the wall at which a tracer is held. */
const MARGIN = 0.2;
/** Most strides a tracer makes in one step; at 60 frames a second none needs as many. */
const MAX_STRIDES = 400;

/** The two moments mixed once for all tracers, in cells a second, so that each sample reads one array. */
function mix({ velocity, shape }: TracerPlane, { from, to, blend }: Step): void {
  const cells = 1000 / shape.dx;
  const early = cells * (from === to ? 1 : 1 - blend);
  const late = from === to ? 0 : cells * blend;
  const { u, v } = from;
  const { u: nextU, v: nextV } = to;
  for (let k = 0; k < u.length; k++) {
    velocity[2 * k] = early * u[k]! + late * nextU[k]!;
    velocity[2 * k + 1] = early * v[k]! + late * nextV[k]!;
  }
}

/** u, v (cells/s) of the last sample */
const sampled = new Float64Array(2);

function sample(velocity: Float32Array, nx: number, gx: number, gy: number): void {
  const i = gx | 0;
  const j = gy | 0;
  const s = gx - i;
  const t = gy - j;
  const k = 2 * (j * nx + i);
  const m = k + 2 * nx;
  const a = (1 - s) * (1 - t);
  const b = s * (1 - t);
  const c = (1 - s) * t;
  const d = s * t;
  sampled[0] = a * velocity[k]! + b * velocity[k + 2]! + c * velocity[m]! + d * velocity[m + 2]!;
  sampled[1] = a * velocity[k + 1]! + b * velocity[k + 3]! + c * velocity[m + 1]! + d * velocity[m + 3]!;
}

/** Tracer `n` leaves by opening number `opening`, `across` mm from its middle, with `left` s of the step to go. */
type Leave = (n: number, opening: number, across: number, left: number) => void;

/**
 * Moves all tracers by `step.seconds` (s); those that leave enter again in proportion to the inflows, at evenly spread moments.
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
  const { shape, near, cuts, velocity } = plane;
  const { seconds, supply } = step;
  const { nx, ny, dx, originX, originY, distance } = shape;
  const { count, position, age, speed } = cloud;
  const right = nx - 1.001;
  const top = ny - 1.001;
  mix(plane, step);
  layTrails(cloud, seconds);

  for (let n = 0; n < count; n++) {
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
          const gate = entrance(plane, supply, random);
          if (gate < 0) break; // No inflow: it waits at the cut.
          leave?.(n, c / 5, deltaY * cuts[c + 2]! - deltaX * cuts[c + 3]!, left);
          enter(cloud, plane, n, gate, { hepaticShare: supply.hepaticShare, random });
          x = (position[2 * n]! - originX) / dx;
          y = (position[2 * n + 1]! - originY) / dx;
          age[n] = left;
          // It enters at a random moment of the step, so that no bands of tracers form at an inlet.
          left *= random();
          continue;
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
  }
  cloud.sincePulse += seconds;
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
    const excess = ((1 - t) * ((1 - s) * a + s * b) + t * ((1 - s) * c + s * d)) / dx + MARGIN;
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
