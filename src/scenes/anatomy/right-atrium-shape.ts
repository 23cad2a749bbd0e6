/** Outline of the right atrium behind an extracardiac conduit. */
import { closedOutline } from "../../sim/geometry/centreline.ts";
import type { Point } from "../../sim/geometry/geometry.ts";
import type { Placing } from "./placing.ts";

/** x and y in the heart. */
const OUTLINE: readonly Point[] = [
  [-22, -10],
  [-24.6, -2],
  [-24.6, 7],
  [-19, 13],
  [-6, 14.4],
  [4, 13],
  [9, 4],
  [9.6, -8],
  [8.4, -17],
  [5.4, -23.4],
  [4.4, -27],
  [1.2, -27.4],
  [0.2, -24.4],
  [-6, -23],
  [-16.4, -18],
];

/** Empty at the other stages, whose right atrium is part of the pathway or of a common atrium. */
export const rightAtrium = ({ frame, inHeart }: Placing): readonly Point[] =>
  frame.graft?.kind === "conduit" ? closedOutline(OUTLINE.map((point) => inHeart(...point))) : [];
