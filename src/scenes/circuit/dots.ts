/** Dots of blood on the schematic: set down once, evenly and without chance, then moved by what the model's traces let pass. */

import { entryAt } from "../../sim/checked/present.ts";
import { type Curve, curve, GOLDEN, placeOn } from "../drawing/curve-drawing.ts";
import type { Vessel } from "./vessel.ts";

/** Dots for each plane unit of length and of width. */
const DENSITY = 1 / 330;

export interface Laid {
  readonly vessel: Vessel;
  readonly line: Curve;
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
  vessels.map((vessel) => ({ vessel, line: curve(vessel.points) }));

export function layDots(laid: readonly Laid[]): Dots {
  const counts = laid.map(({ vessel, line }) =>
    Math.max(3, Math.round(line.length * Math.max(vessel.width, 14) * DENSITY)),
  );
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
    for (let k = 0; k < n; k++, at++) {
      dots.vessel[at] = i;
      dots.start[at] = (k + 0.5) / n;
      dots.across[at] = 2 * (((k + 1) * GOLDEN) % 1) - 1;
    }
  }
  return dots;
}

/** How far apart a bed's strands stand at `fraction` of its length: together at both ends. A plain vessel keeps its width. */
export const spread = (vessel: Vessel, fraction: number): number =>
  vessel.bed ? Math.sin(Math.PI * fraction) ** 0.6 : 1;

/** Plane units for each mL that passes: a wider vessel moves slower; `bodySize` in m2 makes a child and an adult alike. */
export const reachPerMillilitre = (vessel: Vessel, bodySize: number): number =>
  (2200 * (vessel.share ?? 1)) / (vessel.width * vessel.width * bodySize);

/** Where a dot stands once `reach` plane units of blood have passed: x, y, tangent and fraction along, into `out` (5 numbers). */
export function placeDot(laid: Laid, start: number, across: number, reach: number, out: Float64Array): void {
  const turned = start + reach / laid.line.length;
  const fraction = turned - Math.floor(turned);
  placeOn(laid.line, fraction, out);
  const side = across * 0.36 * laid.vessel.width * spread(laid.vessel, fraction);
  out[0] = entryAt(out, 0) - entryAt(out, 3) * side;
  out[1] = entryAt(out, 1) + entryAt(out, 2) * side;
  out[4] = fraction;
}
