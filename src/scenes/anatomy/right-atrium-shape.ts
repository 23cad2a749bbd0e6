/** Outline of the right atrium behind an extracardiac conduit. */
import { closedOutline } from "../../sim/geometry/centreline.ts";
import type { Point } from "../../sim/geometry/geometry.ts";
import type { Placing } from "./placing.ts";

/** x and y in the heart. */
const OUTLINE: readonly Point[] = [
  [-22, -10],
  [-24.6, 3],
  [-19, 13],
  [4, 13],
  [9, -4],
  [5, -24],
  [0, -25],
  [-16, -18],
];

/** Empty at the other stages, whose right atrium is part of the pathway or of a common atrium. */
export const rightAtrium = ({ frame, inHeart }: Placing): readonly Point[] =>
  frame.graft?.kind === "conduit" ? closedOutline(OUTLINE.map((point) => inHeart(...point))) : [];
