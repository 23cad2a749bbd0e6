/** The pericardium's cut edge around the heart. */
import { closedOutline } from "../../sim/geometry/centreline.ts";
import type { Point } from "../../sim/geometry/geometry.ts";
import type { Placing } from "./placing.ts";

/** x and y in the heart; its lower end rests on the diaphragm. */
const EDGE: readonly Point[] = [
  [1, 21],
  [12, 24],
  [25, 23],
  [38, 24],
  [49, 20],
  [55, 10],
  [57, -4],
  [64, -17],
  [67, -31],
  [66, -44],
  [59, -53],
  [44, -56],
  [24, -55],
  [6, -49],
  [-2, -36],
  [-4, -10],
];

export const pericardium = ({ inHeart }: Placing): readonly Point[] =>
  closedOutline(EDGE.map((point) => inHeart(...point)));
