/** The lines of a plot by which panes are distinguished: whole, dashed, dotted. */
import type { Graphics } from "pixi.js";
import { lastOf } from "../../sim/checked/present.ts";
import type { Theme } from "../theme/theme.ts";
import type { Sizes } from "../theme/type.ts";

/** Static pressure of pane `index`: whole, dashed, dotted. */
export function pathLine(
  ink: Graphics,
  points: readonly number[],
  index: number,
  sizes: Sizes,
  theme: Theme,
): void {
  const width = Math.max(3, sizes.axis * 0.2);
  const color = index === 0 ? theme.colour.pressure : theme.colour.ink;
  if (index === 0) ink.poly([...points], false).stroke({ width, color, join: "round", cap: "round" });
  else dashed(ink, points, index === 1 ? [14, 8] : [3, 7], { width, color, alpha: 1 });
}

export function dashed(
  ink: Graphics,
  points: readonly number[],
  pattern: readonly [number, number],
  style: { width: number; color: string; alpha: number },
): void {
  const [on, off] = pattern;
  let phase = 0;
  for (let i = 0; i + 3 < points.length; i += 2) {
    const [ax, ay, bx, by] = points.slice(i, i + 4) as [number, number, number, number];
    const length = Math.hypot(bx - ax, by - ay);
    let at = 0;
    while (at < length) {
      const inDash = phase < on;
      const run = Math.min(length - at, (inDash ? on : on + off) - phase);
      if (inDash && run > 0) {
        const f = at / length;
        const t = (at + run) / length;
        ink.moveTo(ax + (bx - ax) * f, ay + (by - ay) * f).lineTo(ax + (bx - ax) * t, ay + (by - ay) * t);
      }
      at += run;
      phase = (phase + run) % (on + off);
    }
  }
  ink.stroke(style);
}

/** y of a line of points (x, y, x, y, ...; x rising) at `x`; the nearer end's beyond its ends. */
export function heightAt(points: readonly number[], x: number): number {
  for (let i = 0; i + 3 < points.length; i += 2) {
    const [ax, ay, bx, by] = points.slice(i, i + 4) as [number, number, number, number];
    if (x <= bx) return ay + ((by - ay) * Math.max(0, x - ax)) / Math.max(1e-9, bx - ax);
  }
  return lastOf(points);
}
