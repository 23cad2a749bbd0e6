/** Outside of the right atrium beside an extracardiac conduit: a free wall that is closed, and its appendage before the aorta's root. */
import { closedOutline } from "../../sim/geometry/centreline.ts";
import type { Point } from "../../sim/geometry/geometry.ts";
import { beside } from "./graft-course.ts";
import { type Placing, smoothLine } from "./placing.ts";

/** mm of a 5-year-old from the conduit's lumen over its rings to the free wall, and by which that draws back towards its roof. */
const APART = 3.4;
const ROUNDED = 6;
/** Parts of the conduit's length between which it lies. */
const [LOW, HIGH] = [0.06, 0.92];
/** x and y in the heart: its border behind the aorta and along the groove beside the ventricle, and down to where the vein was cut off it. */
const FAR: readonly Point[] = [
  [12, 15],
  [14, 4],
  [13, -8],
  [9.6, -16],
  [9, -22],
  [8.6, -28],
  [5.4, -32.6],
  [1, -32.8],
  [-2, -29.4],
  [-2, -23],
];
/** Its appendage, a beak before the aorta's root: from its neck above over the notches of its edge to that below. */
const APPENDAGE: readonly Point[] = [
  [-1.2, 9],
  [0.8, 12.4],
  [4.6, 13.4],
  [7.4, 12.4],
  [8, 10.8],
  [10, 9.4],
  [9.6, 7.6],
  [11.4, 5.4],
  [9.8, 3.6],
  [10.2, 1],
  [7.8, -0.6],
  [5, -1.6],
  [3, -4.6],
  [1.8, -9],
  [0.4, -12],
];

/** Empty at the other stages, whose right atrium is part of the pathway or of a common atrium. */
export function rightAtrium({ frame, inHeart }: Placing): readonly Point[] {
  const { graft, scale } = frame;
  if (graft?.kind !== "conduit") return [];
  const free = Array.from({ length: 13 }, (_, i): Point => {
    const up = (i / 12) ** 5;
    return beside(graft, LOW + (HIGH - LOW) * (i / 12), 1, (APART + ROUNDED * up) * scale);
  });
  return closedOutline([...free, ...FAR.map((point) => inHeart(...point))]);
}

export const rightAppendage = ({ frame, inHeart }: Placing): readonly Point[] =>
  frame.graft?.kind === "conduit" ? smoothLine(APPENDAGE.map((point) => inHeart(...point))) : [];
