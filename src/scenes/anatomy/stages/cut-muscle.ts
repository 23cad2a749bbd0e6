/** An atrium's wall where it is cut: muscle in layers beside its lining. The other side of the line is left to be cleared. */
import type { Point } from "../../../sim/geometry/geometry.ts";
import { WALL } from "../../layers/fade.ts";
import { mix } from "../../theme/colour.ts";
import type { Theme } from "../../theme/theme.ts";
import { type Ink, trace } from "../painted-sheet.ts";
import { type Tissue, tissue } from "../tones.ts";

export interface Cut {
  /** mm, on the edge of the lining */
  readonly at: Point;
  /** mm; 0 where it has no muscle */
  readonly thick: number;
  /** how far it has thinned on a vein's own wall, 0..1 */
  readonly sleeve: number;
}

/** mm of muscle where it grows thin as a sleeve on a vein. */
export const thinned = (thick: number, sleeve: number): number =>
  sleeve < 1 ? thick + (WALL - thick) * sleeve : 0;

/** A band along the line, as wide on its sides as asked for at each place. */
function paintBand(ink: Ink, cuts: readonly Cut[], widthAt: (cut: Cut) => number): void {
  cuts.slice(1).forEach(({ at }, i) => {
    const before = cuts[i];
    if (!before) return;
    const width = widthAt(before);
    if (width <= 0) return;
    trace(ink, [before.at, at]);
    ink.lineWidth = 2 * width;
    ink.stroke();
  });
}

/** Lit from the upper left, between two places. */
export function litAcross(ink: Ink, [ax, ay]: Point, [bx, by]: Point, theme: Theme): CanvasGradient {
  const { light, body, shade } = tissue("atrium", theme);
  const lit = ink.createLinearGradient(ax, ay, bx, by);
  lit.addColorStop(0, light);
  lit.addColorStop(0.4, body);
  lit.addColorStop(1, mix(body, shade, 0.6));
  return lit;
}

/** @param size mm of the body for one of a 5-year-old */
export function paintCutMuscle(
  ink: Ink,
  cuts: readonly Cut[],
  size: number,
  lit: CanvasGradient,
  { edge, shade, light }: Tissue,
): void {
  for (const [part, more, colour] of [
    [1, 0.35, edge],
    [1, 0, lit],
    [0.76, 0, shade],
    [0.71, 0, lit],
    [0.52, 0, shade],
    [0.47, 0, lit],
    [0.24, 0, light],
    [0, 0.4, edge],
  ] as const) {
    ink.strokeStyle = colour;
    paintBand(ink, cuts, ({ thick }) => (thick > 0 ? part * thick + more * size : 0));
  }
}

/** A vein's own wall comes out from beneath the muscle. */
export function clearVeins(ink: Ink, cuts: readonly Cut[]): void {
  ink.save();
  ink.globalCompositeOperation = "destination-out";
  paintBand(ink, cuts, ({ sleeve }) => WALL * Math.min(1, 1.25 * sleeve));
  ink.restore();
}
