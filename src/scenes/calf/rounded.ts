/** A part of a limb: between two borders, or within a line around it. */

import { entryAt } from "../../sim/checked/present.ts";
import { curve, placeOn, type Spot, spots } from "../drawing/curve-drawing.ts";

/** Borders from one end to the other, with as many points each. */
export interface Part {
  readonly left: readonly Spot[];
  readonly right: readonly Spot[];
}

const SAMPLES = 96;

/** From the spots of its two borders, as "x y, x y, ...". */
export const partOf = (left: string, right: string): Part => ({
  left: sampled(spots(left)),
  right: sampled(spots(right)),
});

function sampled(border: readonly Spot[]): readonly Spot[] {
  const line = curve(border);
  const at = new Float64Array(4);
  return Array.from({ length: SAMPLES + 1 }, (_, i): Spot => {
    placeOn(line, i / SAMPLES, at);
    return [entryAt(at, 0), entryAt(at, 1)];
  });
}

/** From the spots around it, beginning and ending at one end of it: a part with no corners. */
export function loopOf(around: string): Part {
  const line = curve(spots(around));
  const at = new Float64Array(4);
  const place = (share: number): Spot => {
    placeOn(line, share, at);
    return [entryAt(at, 0), entryAt(at, 1)];
  };
  const half = (way: (share: number) => number) =>
    Array.from({ length: SAMPLES + 1 }, (_, i) => place(way(i / SAMPLES / 2)));
  return { left: half((share) => share), right: half((share) => 1 - share) };
}

/** A line along the part. @param share of the way from the left border to the right one */
export const along = ({ left, right }: Part, share: number): readonly Spot[] =>
  left.map(([x, y], i): Spot => {
    const [tx, ty] = entryAt(right, i);
    return [x + (tx - x) * share, y + (ty - y) * share];
  });

export const outlineOf = ({ left, right }: Part): readonly Spot[] => [...left, ...right.toReversed()];
