/** Where a chamber's tissue ends on the vessels. */
import type { Point } from "../../../sim/geometry/geometry.ts";
import { type Bounds, type Ink, trace } from "../painted-sheet.ts";
import type { Mouth } from "./chamber-shape.ts";

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

/** Beyond a seam begins the artery. */
export function cutAt(ink: Ink, { low, high, way }: Mouth, s: number): void {
  const [dx, dy] = [high[0] - low[0], high[1] - low[1]];
  const far = (from: Point, part: number, out: number): Point => [
    from[0] + part * dx + out * s * way[0],
    from[1] + part * dy + out * s * way[1],
  ];
  ink.save();
  ink.globalCompositeOperation = "destination-out";
  trace(ink, [far(low, -0.6, 0.4), far(high, 0.6, 0.4), far(high, 0.6, 16), far(low, -0.6, 16)], true);
  ink.fill();
  ink.restore();
}
