/** Where strips across the leg begin and end when muscle presses the deep vein: they follow its walls, and the belly bulges back. */
import type { Spot } from "../drawing/curve-drawing.ts";
import type { Part } from "./rounded.ts";
import { halfWidth, narrowing, placeInLeg } from "./vein.ts";

/** Plane units by which the belly of the calf bulges backwards, for each by which it presses the vein in: it keeps its volume. */
const BULGE = 1.5;
export const bulge = (y: number, pressed: number): number => BULGE * narrowing(y, pressed);

/** Places across the leg at a height, plane units: one end of a strip, and its other end. */
export type Ends = (y: number, pressed: number) => readonly [far: number, near: number];

/** Between the skin, or the fascia, behind and the rear wall of the vein, or a line that stays. */
export const behindVein =
  (border: Part, stays?: number): Ends =>
  (y, pressed) => [
    outerAt(border.left, y) - bulge(y, pressed),
    stays ?? placeInLeg(y, -halfWidth(y, pressed)).spot[0],
  ];
/** Between a bone, which does not give way, and the front wall of the vein. */
export const beforeVein =
  (border: Part): Ends =>
  (y, pressed) => [outerAt(border.left, y), placeInLeg(y, halfWidth(y, pressed)).spot[0]];

/** Where a place goes that is painted across the leg between two ends, as far as the far one, which stays. */
export function bent(ends: Ends, [x, y]: Spot, pressed: number): Spot {
  const [[far, near], [stays, moved]] = [ends(y, 0), ends(y, pressed)];
  const part = (far - x) / (far - near);
  return part > 0 ? [stays - part * (stays - moved), y] : [x, y];
}

/** x of a border at a height. */
function outerAt(border: readonly Spot[], y: number): number {
  return border.reduce((near, spot) => (Math.abs(spot[1] - y) < Math.abs(near[1] - y) ? spot : near))[0];
}
