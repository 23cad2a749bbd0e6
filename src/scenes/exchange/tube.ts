/** Places beside a line, and a vessel of varying width along it. */
import { entryAt } from "../../sim/checked/present.ts";
import { type Ink, trace } from "../anatomy/painted-sheet.ts";
import { type Curve, placeOn, type Spot } from "../drawing/curve-drawing.ts";

const out = new Float64Array(4);

/** A place `across` plane units beside the line, to the right of its way. */
export function beside(line: Curve, part: number, across: number): Spot {
  placeOn(line, part, out);
  const [x, y, dx, dy] = [entryAt(out, 0), entryAt(out, 1), entryAt(out, 2), entryAt(out, 3)];
  return [x - dy * across, y + dx * across];
}

/** Where the line goes there, radians. */
export function headingAt(line: Curve, part: number): number {
  placeOn(line, part, out);
  return Math.atan2(entryAt(out, 3), entryAt(out, 2));
}

/** To the right of a line's way, and to its left. */
export type Side = 1 | -1;

/** Lays a vessel's outline as the path that `ink` fills or clips next. @param half its width at a part of its length, plane units */
export function traceTube(ink: Ink, line: Curve, half: (part: number, side: Side) => number): void {
  // Closer where a blind end is round.
  const parts = Array.from({ length: 91 }, (_, i) => (i / 90) ** 1.5);
  trace(
    ink,
    [
      ...parts.map((part) => beside(line, part, half(part, 1))),
      ...parts.toReversed().map((part) => beside(line, part, -half(part, -1))),
    ],
    true,
  );
}

/** Fills it. */
export function fillTube(
  ink: Ink,
  line: Curve,
  half: (part: number, side: Side) => number,
  style: string | CanvasGradient,
): void {
  traceTube(ink, line, half);
  ink.fillStyle = style;
  ink.fill();
}

/** Strokes a line that runs beside another one. */
export function strokeBeside(
  ink: Ink,
  line: Curve,
  across: number,
  width: number,
  style: string | CanvasGradient,
): void {
  trace(
    ink,
    Array.from({ length: 91 }, (_, i) => beside(line, i / 90, across)),
  );
  ink.lineWidth = width;
  ink.strokeStyle = style;
  ink.stroke();
}
