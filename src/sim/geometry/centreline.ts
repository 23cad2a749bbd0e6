/** Plane curves in mm: cubic arcs, smooth closed outlines, and walking along a line of points. */

import { entryAt, lastOf } from "../checked/present.ts";
import type { Point } from "./geometry.ts";

/** Points in mm, with the length from the first point to each. */
export interface Line {
  readonly points: readonly Point[];
  /** mm, [points.length] */
  readonly run: readonly number[];
}

/**
 * The points (mm) with the length along them.
 * @param points two at least
 */
export function line(points: readonly Point[]): Line {
  const run = [0];
  for (let i = 1; i < points.length; i++) {
    const [ax, ay] = entryAt(points, i - 1);
    const [bx, by] = entryAt(points, i);
    run.push(entryAt(run, i - 1) + Math.hypot(bx - ax, by - ay));
  }
  return { points, run };
}

/** A place on a line (mm) with its local directions. */
export interface Spot {
  readonly at: Point;
  /** unit vectors: along the line, and to its left */
  readonly along: Point;
  readonly left: Point;
}

/** The place (mm) at `part` of the line's length, a fraction that is clamped to 0 to 1. */
export function spotAt({ points, run }: Line, part: number): Spot {
  const length = lastOf(run) * Math.min(1, Math.max(0, part));
  let i = 1;
  while (i < points.length - 1 && entryAt(run, i) < length) i++;
  const [ax, ay] = entryAt(points, i - 1);
  const [bx, by] = entryAt(points, i);
  const step = entryAt(run, i) - entryAt(run, i - 1);
  const t = step > 0 ? (length - entryAt(run, i - 1)) / step : 0;
  const along: Point = [(bx - ax) / step, (by - ay) / step];
  return { at: [ax + t * (bx - ax), ay + t * (by - ay)], along, left: [-along[1], along[0]] };
}

/**
 * A cubic Bezier curve as `steps + 1` points, mm.
 * @param pull control point (mm) near `from`
 * @param draw control point (mm) near `to`
 */
export function arc(from: Point, pull: Point, draw: Point, to: Point, steps = 16): Point[] {
  return Array.from({ length: steps + 1 }, (_, i) => {
    const t = i / steps;
    const s = 1 - t;
    const mix = (k: 0 | 1) =>
      s ** 3 * from[k] + 3 * s * s * t * pull[k] + 3 * s * t * t * draw[k] + t ** 3 * to[k];
    return [mix(0), mix(1)] as const;
  });
}

/** 0 below `low`, 1 above `high`, 3t2 - 2t3 between; `x`, `low` and `high` in one and the same unit, the answer dimensionless. `low` < `high`. */
export function smoothStep(low: number, high: number, x: number): number {
  const t = Math.min(1, Math.max(0, (x - low) / (high - low)));
  return t * t * (3 - 2 * t);
}

/** A smooth closed outline (mm) through the points (mm), by Catmull-Rom; `steps` points for each given one. Three points at least. */
export function closedOutline(through: readonly Point[], steps = 8): Point[] {
  const count = through.length;
  return through.flatMap((_, i) => {
    const [p, q, r, s] = [-1, 0, 1, 2].map((k) => entryAt(through, (i + k + count) % count)) as [
      Point,
      Point,
      Point,
      Point,
    ];
    const pull: Point = [q[0] + (r[0] - p[0]) / 6, q[1] + (r[1] - p[1]) / 6];
    const draw: Point = [r[0] - (s[0] - q[0]) / 6, r[1] - (s[1] - q[1]) / 6];
    return arc(q, pull, draw, r, steps).slice(0, -1);
  });
}

/** Outline (mm) of a band around a line of points (mm); its width goes from `begin` to `end` (mm) linearly with length. */
export function band(points: readonly Point[], begin: number, end: number): Point[] {
  const whole = line(points);
  const total = lastOf(whole.run);
  const side = (sign: 1 | -1) =>
    points.map((_, i) => {
      const part = entryAt(whole.run, i) / total;
      const { at, left } = spotAt(whole, part);
      const half = (sign * (begin + (end - begin) * part)) / 2;
      return [at[0] + half * left[0], at[1] + half * left[1]] as const;
    });
  return [...side(1), ...side(-1).reverse()];
}
