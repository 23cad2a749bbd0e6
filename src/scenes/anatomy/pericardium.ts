/** The pericardium's cut edge around the heart. */
import { closedOutline } from "../../sim/geometry/centreline.ts";
import type { Point } from "../../sim/geometry/geometry.ts";
import type { Placing } from "./placing.ts";

/** x and y in the heart; its lower end rests on the diaphragm. */
const EDGE: readonly Point[] = [
  [1, 20],
  [12, 22],
  [25, 22],
  [38, 23],
  [47, 21],
  [53, 12],
  [54, 1],
  [57, -7],
  [63, -18],
  [66, -31],
  [65, -43],
  [58, -52],
  [44, -55],
  [24, -54],
  [6, -48],
  [-2, -36],
  [-4, -10],
];

export const pericardium = ({ inHeart }: Placing): readonly Point[] =>
  closedOutline(EDGE.map((point) => inHeart(...point)));
