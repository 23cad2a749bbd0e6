/** Where strips across the leg begin and end when muscle presses the deep vein: they follow its walls, and the belly bulges back. */
import { entryAt, lastOf } from "../../sim/checked/present.ts";
import type { Spot } from "../drawing/curve-drawing.ts";
import { fattening } from "./foot.ts";
import { FASCIA } from "./leg-parts.ts";
import type { Part } from "./rounded.ts";
import { freeHalf, narrowing, placeInLeg } from "./vein.ts";

/** Heights of the leg's plane. */
const HEIGHT = 1000;

/** x of a border by its height, plane units; beyond its ends as there. */
function borderAt(border: readonly Spot[]): (y: number) => number {
  const xs = Float64Array.from({ length: HEIGHT + 2 }, (_, y) => {
    const next = border.findIndex((spot) => spot[1] > y);
    if (next < 1) return (next === 0 ? entryAt(border, 0) : lastOf(border))[0];
    const [[ax, ay], [bx, by]] = [entryAt(border, next - 1), entryAt(border, next)];
    return ax + ((y - ay) / (by - ay)) * (bx - ax);
  });
  return (y) => {
    const at = Math.max(0, Math.min(HEIGHT, y));
    const low = Math.floor(at);
    return entryAt(xs, low) + (at - low) * (entryAt(xs, low + 1) - entryAt(xs, low));
  };
}

const rear = borderAt(FASCIA.left);

/** Factor on what its shortening alone would thicken a belly of one width: its fibres turn too. Pressed hardest it gains 8 mm; lateral head and soleus gain 5 to 7 and 6 to 7 at their greatest effort (Maganaris, J Physiol 1998;512:603). */
const TURNS = 2.5;

/** Plane units by which the belly of the calf bulges backwards: what it thickens, and takes from the vein, which is drawn wider than life. */
export const bulge = (y: number, pressed: number): number =>
  TURNS * fattening(y, pressed) * (placeInLeg(y, -freeHalf(y)).spot[0] - rear(y)) + narrowing(y, pressed);

/** Plane units from the vein's middle to its wall; the bulges behind valves press into the muscle. */
const wallAt = (y: number, pressed: number): number => freeHalf(y) - narrowing(y, pressed);

/** Places across the leg at a height, plane units: one end of a strip, and its other end. */
export type Ends = (y: number, pressed: number) => readonly [far: number, near: number];

/** Between the skin, or the fascia, behind and the rear wall of the vein, or a line that stays. */
export function behindVein(border: Part, stays?: number): Ends {
  const outer = borderAt(border.left);
  return (y, pressed) => [outer(y) - bulge(y, pressed), stays ?? placeInLeg(y, -wallAt(y, pressed)).spot[0]];
}
/** Between a bone, which does not give way, and the front wall of the vein. */
export function beforeVein(border: Part): Ends {
  const outer = borderAt(border.left);
  return (y, pressed) => [outer(y), placeInLeg(y, wallAt(y, pressed)).spot[0]];
}

/** Where a place goes that is painted across the leg between two ends, as far as the far one, which stays. */
export function bent(ends: Ends, [x, y]: Spot, pressed: number): Spot {
  const [[far, near], [stays, moved]] = [ends(y, 0), ends(y, pressed)];
  const part = (far - x) / (far - near);
  return part > 0 ? [stays - part * (stays - moved), y] : [x, y];
}
