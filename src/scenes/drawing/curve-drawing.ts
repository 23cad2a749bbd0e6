/** A smooth line through a few points, sampled evenly by length, so that blood can be set at a distance along it. */

import { entryAt, lastOf, present } from "../../sim/checked/present.ts";
import type { Brush } from "./brush.ts";

export type Spot = readonly [x: number, y: number];

/** Points from "x y, x y, ...". */
export const spots = (text: string): readonly Spot[] =>
  text.split(",").map((pair) => {
    const [x, y] = pair.trim().split(/\s+/).map(Number);
    return [present(x), present(y)] as const;
  });

export interface Curve {
  /** samples, evenly spaced by length, first and last on the ends */
  readonly x: Float64Array;
  readonly y: Float64Array;
  readonly length: number;
}

const PER_SPAN = 24;

/** Centripetal Catmull-Rom through all points (Barry & Goldman 1988), resampled at even spacing of about `spacing`; without a corner where it closes. */
export function curve(points: readonly Spot[], spacing = 4): Curve {
  if (points.length < 2) throw new Error(`a curve needs two points, got ${points.length}`);
  const dense: Spot[] = [];
  const last = points.length - 1;
  const closed =
    last > 2 &&
    entryAt(points, 0)[0] === entryAt(points, last)[0] &&
    entryAt(points, 0)[1] === entryAt(points, last)[1];
  for (let i = 0; i < last; i++) {
    const a =
      points[i - 1] ??
      (closed ? entryAt(points, last - 1) : reflect(entryAt(points, i), entryAt(points, i + 1)));
    const d =
      points[i + 2] ?? (closed ? entryAt(points, 1) : reflect(entryAt(points, i + 1), entryAt(points, i)));
    for (let k = 0; k < PER_SPAN; k++)
      dense.push(between(a, entryAt(points, i), entryAt(points, i + 1), d, k / PER_SPAN));
  }
  dense.push(entryAt(points, last));
  return resample(dense, spacing);
}

const reflect = (at: Spot, other: Spot): Spot => [2 * at[0] - other[0], 2 * at[1] - other[1]];

function between(a: Spot, b: Spot, c: Spot, d: Spot, fraction: number): Spot {
  const knot = (p: Spot, q: Spot) => Math.sqrt(Math.hypot(q[0] - p[0], q[1] - p[1])) || 1e-6;
  const t1 = knot(a, b);
  const t2 = t1 + knot(b, c);
  const t3 = t2 + knot(c, d);
  const t = t1 + (t2 - t1) * fraction;
  const mix = (p: Spot, q: Spot, from: number, to: number): Spot => {
    const w = (t - from) / (to - from);
    return [p[0] + (q[0] - p[0]) * w, p[1] + (q[1] - p[1]) * w];
  };
  const ab = mix(a, b, 0, t1);
  const bc = mix(b, c, t1, t2);
  const cd = mix(c, d, t2, t3);
  return mix(mix(ab, bc, 0, t2), mix(bc, cd, t1, t3), t1, t2);
}

function resample(dense: readonly Spot[], spacing: number): Curve {
  const along = [0];
  for (let i = 1; i < dense.length; i++)
    along.push(
      entryAt(along, i - 1) +
        Math.hypot(
          entryAt(dense, i)[0] - entryAt(dense, i - 1)[0],
          entryAt(dense, i)[1] - entryAt(dense, i - 1)[1],
        ),
    );
  const length = lastOf(along);
  const n = Math.max(2, Math.round(length / spacing) + 1);
  const x = new Float64Array(n);
  const y = new Float64Array(n);
  let i = 0;
  for (let k = 0; k < n; k++) {
    const s = (length * k) / (n - 1);
    while (i < dense.length - 2 && entryAt(along, i + 1) < s) i++;
    const w = (s - entryAt(along, i)) / (entryAt(along, i + 1) - entryAt(along, i) || 1);
    x[k] = entryAt(dense, i)[0] + (entryAt(dense, i + 1)[0] - entryAt(dense, i)[0]) * w;
    y[k] = entryAt(dense, i)[1] + (entryAt(dense, i + 1)[1] - entryAt(dense, i)[1]) * w;
  }
  return { x, y, length };
}

export const spotsOf = ({ x, y }: Pick<Curve, "x" | "y">): readonly Spot[] =>
  Array.from(x, (each, i) => [each, entryAt(y, i)]);

/** Lays the line as the path that `ink` fills or strokes next. */
export function traceCurve(ink: Pick<Brush, "moveTo" | "lineTo">, line: Pick<Curve, "x" | "y">): void {
  ink.moveTo(entryAt(line.x, 0), entryAt(line.y, 0));
  for (let i = 1; i < line.x.length; i++) ink.lineTo(entryAt(line.x, i), entryAt(line.y, i));
}

/** The same for a closed smooth line through the spots, sampled every 2. */
export function traceClosed(
  ink: Pick<Brush, "moveTo" | "lineTo" | "closePath">,
  outline: readonly Spot[],
): void {
  traceCurve(ink, curve([...outline, entryAt(outline, 0)], 2));
  ink.closePath();
}

/** Where `fraction` (0..1, clamped) of the length lies: x, y and the unit tangent, written into `out` (4 numbers). */
export function placeOn(line: Curve, fraction: number, out: Float64Array): void {
  const last = line.x.length - 1;
  const at = Math.min(1, Math.max(0, fraction)) * last;
  const i = Math.min(last - 1, Math.floor(at));
  const w = at - i;
  const dx = entryAt(line.x, i + 1) - entryAt(line.x, i);
  const dy = entryAt(line.y, i + 1) - entryAt(line.y, i);
  const step = Math.hypot(dx, dy) || 1;
  out[0] = entryAt(line.x, i) + dx * w;
  out[1] = entryAt(line.y, i) + dy * w;
  out[2] = dx / step;
  out[3] = dy / step;
}
