/** Outside of the right atrium between an extracardiac conduit and the heart: closed where both great veins were cut off it, its appendage before the aorta's root. */
import { entryAt } from "../../sim/checked/present.ts";
import { closedOutline } from "../../sim/geometry/centreline.ts";
import type { Point } from "../../sim/geometry/geometry.ts";
import { spots } from "../drawing/curve-drawing.ts";
import { type Placing, smoothLine } from "./placing.ts";

/** x and y in the heart; to the right of where that begins x is a part of the way to the conduit, under which it goes on. */
const UNDER = spots("-0.86 -33, -1.2 -22, -1.5 -8, -1.5 4, -1.2 12");
/** Its dome, where the upper vein was cut off it. */
const DOME = spots("-0.94 14, -0.86 16.4, -0.66 18, -0.3 18, -0.1 16.4, 0.6 14.6");
/** Behind the aorta, along the groove beside the ventricle, and its floor before the lower vein. */
const FAR = spots(
  "6 15, 12 13, 14 4, 13 -8, 10.6 -14.6, 7.6 -19.4, 5.2 -24, 4.6 -28.6, 4.8 -32.4, 3 -36, -0.1 -37.4, -0.5 -36.4",
);
/** Where the lower vein was cut off it: a seam in its wall, beside that. */
const SEAM = spots("-0.5 -20.5, -0.2 -23.6, -0.04 -27, -0.1 -30.4, -0.34 -33.4");
/** Its appendage, a beak before the aorta's root: from its neck above over the notches of its edge to that below. */
const APPENDAGE = spots(
  "-0.4 9.4, 0.6 12.4, 4.2 13.6, 7.4 12.6, 8 11, 10.2 9.6, 9.8 7.8, 11.8 5.4, 10 3.6, 10.4 1, 8 -0.8, 5 -1.8, 2.6 -4.8, 0.8 -9, -0.1 -12",
);
/** Muscles within it that show on it. */
const COMB = [
  "1.4 9, 4 10, 6.8 11.6",
  "1.6 6.6, 5 7, 8.8 8.4",
  "1.8 4, 5 4, 9.4 4.4",
  "1.8 1.4, 4.6 1.2, 8.4 1",
].map(spots);

export interface RightAtrium {
  /** closed, mm */
  readonly outline: readonly Point[];
  /** where the veins were cut off it */
  readonly seams: readonly (readonly Point[])[];
  readonly appendage: readonly Point[];
  readonly comb: readonly (readonly Point[])[];
}

/** Null at the other stages, whose right atrium is part of the pathway or of a common atrium. */
export function rightAtrium({ frame, inHeart }: Placing): RightAtrium | null {
  const { graft, heart, heartScale } = frame;
  if (graft?.kind !== "conduit") return null;
  const edge = Math.max(...graft.line.map(([x], i) => x + entryAt(graft.widths, i) / 2));
  const gap = (heart - edge) / heartScale;
  const at = ([x, y]: Point): Point => inHeart(x < 0 ? gap * x : x, y);
  const placed = (points: readonly Point[]) => smoothLine(points.map(at));
  return {
    outline: closedOutline([...UNDER, ...DOME, ...FAR].map(at)),
    seams: [placed(SEAM), placed(DOME.slice(1, -1).map(([x, y]) => [0.9 * x - 0.04, y - 1.3]))],
    appendage: placed(APPENDAGE),
    comb: COMB.map(placed),
  };
}
