/**
 * The hot loop: every tracer follows the flow by the midpoint rule, in strides of at most {@link STRIDE} cells, in a field that
 * goes over from one moment to the next. Nothing is allocated. A step that would end in a wall is set back along the wall's normal.
 */
import type { FlowField } from "../field/flow-field.ts";
import type { RandomSource } from "../random.ts";
import { enter, entrance, type Supply } from "./release.ts";
import { layTrails, type TracerCloud } from "./tracer-cloud.ts";
import { STRIDE, type TracerPlane } from "./tracer-plane.ts";

export interface Step {
  readonly from: FlowField;
  readonly to: FlowField;
  /** 0 = `from`, 1 = `to` */
  readonly blend: number;
  /** s of blood time */
  readonly seconds: number;
  readonly supply: Supply;
}

/** Cells from the wall at which a tracer is held. */
const MARGIN = 0.2;
/** Most strides a tracer makes in one step; at 60 frames a second none needs as many. */
const MOST_STRIDES = 400;

/** u, v (mm/s) of the last sample */
const sampled = new Float64Array(2);

function sample(from: FlowField, to: FlowField, blend: number, nx: number, gx: number, gy: number): void {
  const i = gx | 0;
  const j = gy | 0;
  const s = gx - i;
  const t = gy - j;
  const k = j * nx + i;
  const a = (1 - s) * (1 - t) * 1000;
  const b = s * (1 - t) * 1000;
  const c = (1 - s) * t * 1000;
  const d = s * t * 1000;
  const { u, v } = from;
  let x = a * u[k]! + b * u[k + 1]! + c * u[k + nx]! + d * u[k + nx + 1]!;
  let y = a * v[k]! + b * v[k + 1]! + c * v[k + nx]! + d * v[k + nx + 1]!;
  if (from !== to) {
    const later = to.u;
    const laterV = to.v;
    x += blend * (a * later[k]! + b * later[k + 1]! + c * later[k + nx]! + d * later[k + nx + 1]! - x);
    y += blend * (a * laterV[k]! + b * laterV[k + 1]! + c * laterV[k + nx]! + d * laterV[k + nx + 1]! - y);
  }
  sampled[0] = x;
  sampled[1] = y;
}

/** Moves all tracers by `seconds`; those that leave come in again in proportion to the inflows, at an even spread of moments. */
export function advance(cloud: TracerCloud, plane: TracerPlane, step: Step, random: RandomSource): void {
  const { shape, near, cuts } = plane;
  const { from, to, blend, seconds, supply } = step;
  const { nx, ny, cell, originX, originY, distance } = shape;
  const { count, position, age, speed } = cloud;
  const stride = STRIDE * cell;
  const right = nx - 1.001;
  const top = ny - 1.001;
  layTrails(cloud, seconds);

  for (let n = 0; n < count; n++) {
    let x = position[2 * n]!;
    let y = position[2 * n + 1]!;
    let left = seconds;
    let fast = 0;
    age[n]! += seconds;
    for (let strides = 0; left > 0 && strides < MOST_STRIDES; strides++) {
      let gx = Math.min(right, Math.max(0, (x - originX) / cell));
      let gy = Math.min(top, Math.max(0, (y - originY) / cell));
      sample(from, to, blend, nx, gx, gy);
      let u = sampled[0]!;
      let v = sampled[1]!;
      fast = Math.sqrt(u * u + v * v);
      const h = fast * left > stride ? stride / fast : left;
      gx = Math.min(right, Math.max(0, (x + 0.5 * h * u - originX) / cell));
      gy = Math.min(top, Math.max(0, (y + 0.5 * h * v - originY) / cell));
      sample(from, to, blend, nx, gx, gy);
      u = sampled[0]!;
      v = sampled[1]!;
      let nextX = x + h * u;
      let nextY = y + h * v;
      left -= h;

      gx = Math.min(right, Math.max(0, (nextX - originX) / cell));
      gy = Math.min(top, Math.max(0, (nextY - originY) / cell));
      const k = ((gy + 0.5) | 0) * nx + ((gx + 0.5) | 0);
      const c = 5 * (near[k]! - 1);
      if (c >= 0) {
        const dx = nextX - cuts[c]!;
        const dy = nextY - cuts[c + 1]!;
        if (dx * cuts[c + 2]! + dy * cuts[c + 3]! > 0) {
          const gate = entrance(plane, supply, random);
          if (gate >= 0) {
            enter(cloud, plane, n, gate, supply.liverShare, random);
            x = position[2 * n]!;
            y = position[2 * n + 1]!;
            age[n] = left;
            // The place within this step at which it enters is chance: no bands of tracers at an inlet.
            left *= random();
            continue;
          }
          // Nothing comes in: it waits at the cut.
          nextX = x;
          nextY = y;
          left = 0;
        }
      }
      // Near a wall: hold it off, along the wall's normal; where that fails it stays where it was.
      if (distance[k]! > -1.5 * cell) {
        const off = held(distance, nx, gx, gy, cell);
        if (off > 0) {
          nextX = originX + pushed[0]! * cell;
          nextY = originY + pushed[1]! * cell;
          if (off > 1) {
            nextX = x;
            nextY = y;
          }
        }
      }
      x = nextX;
      y = nextY;
    }
    position[2 * n] = x;
    position[2 * n + 1] = y;
    speed[n] = fast * 1e-3;
  }
  cloud.dyeLeft = Math.max(0, cloud.dyeLeft - seconds);
}

/** Place (cells) to which `held` has pushed */
const pushed = new Float64Array(2);

/** 0 when the place is clear of the wall; 1 when `pushed` holds a clear place near it; 2 when there is none. */
function held(distance: Float32Array, nx: number, gx: number, gy: number, cell: number): number {
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
    const excess = ((1 - t) * ((1 - s) * a + s * b) + t * ((1 - s) * c + s * d)) / cell + MARGIN;
    if (excess <= 1e-6) {
      pushed[0] = x;
      pushed[1] = y;
      return attempt === 0 ? 0 : 1;
    }
    const slopeX = (1 - t) * (b - a) + t * (d - c);
    const slopeY = (1 - s) * (c - a) + s * (d - b);
    const steep = (slopeX * slopeX + slopeY * slopeY) / cell || 1;
    x -= (excess * slopeX) / steep;
    y -= (excess * slopeY) / steep;
  }
  return 2;
}
