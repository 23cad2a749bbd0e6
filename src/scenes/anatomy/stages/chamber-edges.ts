/** Where a chamber's tissue ends on the vessels. */
import type { Point } from "../../../sim/geometry/geometry.ts";
import type { Bounds, Ink } from "../painted-sheet.ts";

/** mm of a 5-year-old by which it reaches on to the veins, across and along. */
const CUFF: Point = [9, 8];

/** The muscle ends on the veins as a sleeve that grows thin. */
export function keepChamber(ink: Ink, [a, b]: Point, s: number, [left, bottom, right, top]: Bounds): void {
  const [wide, high] = [a + CUFF[0] * s, b + CUFF[1] * s];
  ink.save();
  ink.globalCompositeOperation = "destination-in";
  ink.scale(1, high / wide);
  const fall = ink.createRadialGradient(0, 0, 0.88 * wide, 0, 0, wide);
  fall.addColorStop(0, "#000");
  fall.addColorStop(1, "#0000");
  ink.fillStyle = fall;
  ink.fillRect(left, (bottom * wide) / high, right - left, ((top - bottom) * wide) / high);
  ink.restore();
}
