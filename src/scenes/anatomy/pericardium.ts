/** The pericardium's cut edge around the heart. */
import { closedOutline } from "../../sim/geometry/centreline.ts";
import type { Point } from "../../sim/geometry/geometry.ts";
import type { Placing } from "./placing.ts";

/** x and y in the heart; its lower end rests on the diaphragm. */
const EDGE: readonly Point[] = [
  [1, 21],
  [12, 23.5],
  [25, 22.5],
  [38, 23.4],
  [49, 20.4],
  [54.6, 10],
  [57, -4],
  [64, -17],
  [67.4, -31],
  [66.4, -44],
  [59.4, -53.4],
  [44, -56.4],
  [24, -54.6],
  [6, -49],
  [-2.4, -36],
  [-4, -10],
];

export const pericardium = ({ inHeart }: Placing): readonly Point[] =>
  closedOutline(EDGE.map((point) => inHeart(...point)));
