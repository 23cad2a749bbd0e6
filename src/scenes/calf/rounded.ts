/** A part of a limb between two borders, lit along its middle: bands that grow lighter inward. */
import type { Graphics } from "pixi.js";
import { entryAt } from "../../sim/checked/present.ts";
import type { Tissue } from "../anatomy/tones.ts";
import { curve, placeOn, type Spot, spots } from "../drawing/curve-drawing.ts";
import { mix } from "../theme/colour.ts";

/** Borders from one end to the other, with as many points each. */
export interface Part {
  readonly left: readonly Spot[];
  readonly right: readonly Spot[];
}

const SAMPLES = 96;
const BANDS = 9;
/** Where across the light falls, from the left border to the right one. */
const LIT = 0.42;

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

/** A line along the part. @param share of the way from the left border to the right one */
export const along = ({ left, right }: Part, share: number): readonly Spot[] =>
  left.map(([x, y], i): Spot => {
    const [tx, ty] = entryAt(right, i);
    return [x + (tx - x) * share, y + (ty - y) * share];
  });

export const outlineOf = ({ left, right }: Part): readonly Spot[] => [...left, ...right.toReversed()];

/** @param edge plane units of the line around it */
export function drawRounded(ink: Graphics, part: Part, tones: Tissue, edge: number): void {
  for (let k = 0; k < BANDS; k++) {
    const depth = k / (BANDS - 1);
    const inward = 0.86 * depth;
    const band = outlineOf({
      left: along(part, LIT * inward),
      right: along(part, 1 - (1 - LIT) * inward),
    });
    ink.poly(band.flat(), true).fill({
      color:
        depth < 0.6
          ? mix(tones.shade, tones.body, depth / 0.6)
          : mix(tones.body, tones.light, (depth - 0.6) / 0.4),
    });
  }
  ink.poly(outlineOf(part).flat(), true).stroke({ color: tones.edge, width: edge, join: "round" });
}
