/** Dots of blood on the schematic: set down once, evenly and without chance, then moved by what the model's traces let pass. */

import { entryAt } from "../../sim/checked/present.ts";
import { type Curve, curve, placeOn } from "../drawing/curve-drawing.ts";
import { GOLDEN, part } from "../drawing/even-spread.ts";
import { type Cavity, cavity, evenStep, placeInCavity, sideOf } from "./chamber-blood.ts";
import { taperOf } from "./fading.ts";
import type { Vessel } from "./vessel.ts";

/** Dots for each plane unit of length and of width. */
const DENSITY = 1 / 330;

export interface Laid {
  readonly vessel: Vessel;
  readonly line: Curve;
  /** where its strands begin and end, when they do so all along two lines */
  readonly between?: readonly [from: Curve, to: Curve];
  readonly cavity?: Cavity;
}

export interface Dots {
  readonly count: number;
  /** index into the laid vessels */
  readonly vessel: Uint16Array;
  /** 0..1 along the vessel when nothing has passed */
  readonly start: Float32Array;
  /** -1..1 across it */
  readonly across: Float32Array;
}

export const layVessels = (vessels: readonly Vessel[]): readonly Laid[] =>
  vessels.map((vessel) => ({
    vessel,
    line: curve(vessel.points),
    ...(vessel.between ? { between: [curve(vessel.between[0]), curve(vessel.between[1])] as const } : {}),
    ...(vessel.sides ? { cavity: cavity(vessel.sides) } : {}),
  }));

/** Plane units of a vessel in which marks of the usual size are seen. */
const SEEN = 3;

/** @param grain size of the marks over the usual: fewer of larger ones, and none in vessels that they would fill @param part of the usual number */
export function layDots(laid: readonly Laid[], grain = 1, part = 1): Dots {
  const density = (part * DENSITY) / Math.max(1, grain ** 1.5);
  const counts = laid.map(({ vessel, line, cavity }) => {
    if (grain > 1 && !vessel.bed && vessel.width < SEEN * grain) return 0;
    const area = cavity?.area ?? line.length * Math.max(vessel.width, 14) * (vessel.between ? 0.45 : 1);
    return Math.max(3, Math.round(area * density));
  });
  const count = counts.reduce((sum, n) => sum + n, 0);
  const dots = {
    count,
    vessel: new Uint16Array(count),
    start: new Float32Array(count),
    across: new Float32Array(count),
  };
  let at = 0;
  for (let i = 0; i < laid.length; i++) {
    const n = entryAt(counts, i);
    const { cavity } = entryAt(laid, i);
    const step = cavity ? evenStep(cavity, n) : GOLDEN;
    for (let k = 0; k < n; k++, at++) {
      dots.vessel[at] = i;
      dots.start[at] = (k + 0.5) / n;
      dots.across[at] = sideOf(k, step);
    }
  }
  return dots;
}

/** A wide bed's blood runs in its strands, not over all its width: plane units of a vessel in which it would move as fast. */
const WIDEST_BED = 26;

/** Plane units for each mL that passes: a wider vessel moves slower; `bodySize` in m2 makes a child and an adult alike. */
export function reachPerMillilitre({ width, bed, share = 1 }: Vessel, bodySize: number): number {
  const open = bed ? Math.min(width, WIDEST_BED) : width;
  return (2200 * share) / (open * open * bodySize);
}

const [start, end] = [new Float64Array(4), new Float64Array(4)];

/** On the strand at `across` (0..1) of the lines between which a bed lies: x, y and tangent into `out`. */
export function placeBetween(
  [from, to]: readonly [Curve, Curve],
  across: number,
  fraction: number,
  out: Float64Array,
): void {
  placeOn(from, across, start);
  placeOn(to, across, end);
  const [dx, dy] = [entryAt(end, 0) - entryAt(start, 0), entryAt(end, 1) - entryAt(start, 1)];
  const length = Math.hypot(dx, dy) || 1;
  out[0] = entryAt(start, 0) + fraction * dx;
  out[1] = entryAt(start, 1) + fraction * dy;
  out[2] = dx / length;
  out[3] = dy / length;
}

/** Where a dot stands once `reach` plane units of blood have passed: x, y, tangent, fraction along, and its speed over the vessel's mean, into `out` (6 numbers). */
export function placeDot(laid: Laid, start: number, across: number, reach: number, out: Float64Array): void {
  const fraction = part(start + reach / laid.line.length);
  if (laid.cavity) {
    placeInCavity(laid.cavity, fraction, across, laid.line.length, out);
    return;
  }
  out[4] = fraction;
  out[5] = 1;
  if (laid.between) {
    placeBetween(laid.between, 0.5 + 0.46 * across, fraction, out);
    return;
  }
  placeOn(laid.line, fraction, out);
  const side = across * 0.36 * laid.vessel.width * taperOf(laid.vessel, fraction);
  out[0] = entryAt(out, 0) - entryAt(out, 3) * side;
  out[1] = entryAt(out, 1) + entryAt(out, 2) * side;
}
