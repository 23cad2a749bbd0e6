/** Streamlines of one moment of the flow, evenly spaced, by second-order steps through the sampled velocity. */
import { bilinear } from "./bilinear.ts";
import type { FieldShape, FlowField } from "./flow-field.ts";

/** One line: points in mm, speed in m/s. */
export interface Streamline {
  /** mm, interleaved x, y, along the flow */
  readonly points: number[];
  /** m/s at its middle */
  readonly speed: number;
}

/** m/s below which blood counts as standing: a line through it would say nothing. */
const STANDING = 0.004;

/** rad each way: a line that winds into an eddy says no more after this, and drawn on it would be a black spot. */
const MAX_TURN = 3 * Math.PI;

/** Velocity (m/s) between cell centres, straight in both directions; [0, 0] outside the blood. */
export function sampleVelocity(shape: FieldShape, field: FlowField, x: number, y: number): [number, number] {
  const { nx, ny, dx, originX, originY, distance } = shape;
  const i = (x - originX) / dx;
  const j = (y - originY) / dx;
  if (!(i >= 0 && j >= 0 && i < nx - 1 && j < ny - 1) || bilinear(distance, nx, i, j) >= 0) return [0, 0];
  return [bilinear(field.u, nx, i, j), bilinear(field.v, nx, i, j)];
}

/**
 * Lines no nearer to each other than `apart` mm where they begin and half of that where they run.
 * Second-order steps of half a cell; the same field always gives the same lines.
 */
export function streamlines(shape: FieldShape, field: FlowField, apart: number): Streamline[] {
  const across = Math.ceil((shape.nx * shape.dx) / apart);
  const high = Math.ceil((shape.ny * shape.dx) / apart);
  const fine = 2;
  const taken = new Uint8Array(across * fine * high * fine);
  const bin = (x: number, y: number): number => {
    const i = Math.floor(((x - shape.originX) / apart) * fine);
    const j = Math.floor(((y - shape.originY) / apart) * fine);
    return i < 0 || j < 0 || i >= across * fine || j >= high * fine ? -1 : j * across * fine + i;
  };
  const step = shape.dx / 2;
  const lines: Streamline[] = [];
  const follow = (x0: number, y0: number, sense: 1 | -1, own: Set<number>): number[] => {
    const points: number[] = [];
    let x = x0;
    let y = y0;
    let heading = 0;
    let turned = 0;
    for (let n = 0; n < 4000; n++) {
      const [u1, v1] = sampleVelocity(shape, field, x, y);
      const first = Math.hypot(u1, v1);
      if (first < STANDING) break;
      const half = (sense * step) / 2 / first;
      const [u2, v2] = sampleVelocity(shape, field, x + u1 * half, y + v1 * half);
      const second = Math.hypot(u2, v2);
      if (second < STANDING) break;
      x += (sense * step * u2) / second;
      y += (sense * step * v2) / second;
      const now = Math.atan2(v2, u2);
      if (n > 0) turned += Math.atan2(Math.sin(now - heading), Math.cos(now - heading));
      heading = now;
      if (Math.abs(turned) > MAX_TURN) break;
      const at = bin(x, y);
      if (at < 0 || (taken[at] && !own.has(at))) break;
      // A closed loop has come round when it meets its own beginning.
      if (n > 40 && Math.hypot(x - x0, y - y0) < 1.5 * step) break;
      own.add(at);
      points.push(x, y);
    }
    return points;
  };
  for (let j = 0; j < high; j++) {
    for (let i = 0; i < across; i++) {
      const x = shape.originX + (i + 0.5) * apart;
      const y = shape.originY + (j + 0.5) * apart;
      const at = bin(x, y);
      if (at < 0 || taken[at]) continue;
      const [u, v] = sampleVelocity(shape, field, x, y);
      if (Math.hypot(u, v) < STANDING) continue;
      const own = new Set([at]);
      const ahead = follow(x, y, 1, own);
      const behind = follow(x, y, -1, own);
      const points: number[] = [];
      for (let k = behind.length - 2; k >= 0; k -= 2) points.push(behind[k]!, behind[k + 1]!);
      points.push(x, y, ...ahead);
      if (points.length * step < 2 * apart) continue;
      for (const cell of own) taken[cell] = 1;
      lines.push({ points, speed: Math.hypot(u, v) });
    }
  }
  return lines;
}
