/** The flow that tracers follow in one step: two moments mixed once for all of them, and read between cells. */
import type { FlowField } from "../flow-field/flow-field.ts";
import type { TracerPlane } from "./tracer-plane.ts";

/** Two moments, and how far between them. */
export interface Blend {
  readonly from: FlowField;
  readonly to: FlowField;
  /** fraction: 0 = `from`, 1 = `to` */
  readonly blend: number;
}

/** The two moments mixed once for all tracers, in cells a second, so that each sample reads one array. */
export function mix({ velocity, shape }: TracerPlane, { from, to, blend }: Blend): void {
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
export const sampled = new Float64Array(2);

/** Puts u, v (cells/s) at (gx, gy) cells from the centre of cell (0, 0) into {@link sampled}. */
export function sample(velocity: Float32Array, nx: number, gx: number, gy: number): void {
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
