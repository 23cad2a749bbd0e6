/** The pericardium's cut edge around the heart. */
import { entryAt } from "../../sim/checked/present.ts";
import { closedOutline } from "../../sim/geometry/centreline.ts";
import type { Point } from "../../sim/geometry/geometry.ts";
import type { Placing } from "./placing.ts";

/** x and y in the heart, from its roof along the left border; its lower end rests on the diaphragm. */
const EDGE: readonly Point[] = [
  [1, 20],
  [12, 22],
  [25, 22],
  [38, 23],
  [47, 21],
  [49.4, 13],
  [50, 3],
  [55, -6.4],
  [63, -18],
  [66, -31],
  [65, -43],
  [58, -52],
  [44, -55],
  [24, -54],
];
/** Where it lies beside the right atrium, mm of a 5-year-old. */
const AIR = 4;
/** by which the free wall of one that is the pathway bulges beyond its lumen */
const BULGE = 10;

/** Both atria lie in it. */
export function pericardium(place: Placing): readonly Point[] {
  const { frame, inHeart } = place;
  const { heart, heartScale, level, scale: s, chamber, graft } = frame;
  const walls = [
    ...frame.atrium.map(([x]) => x),
    ...(chamber ? [-chamber[0] - BULGE * s] : []),
    ...(graft ? graft.line.map(([x], i) => x - entryAt(graft.widths, i) / 2) : []),
  ];
  const right = (Math.min(...walls) - AIR * s - heart) / heartScale;
  const roof = chamber ? (chamber[1] - level) / heartScale : 16;
  const border: readonly Point[] = [
    [0.4 * right, -45],
    [0.85 * right, -34],
    [right, -16],
    [right, 0.3 * roof],
    [0.86 * right, 0.8 * roof],
    [0.4 * right, roof + 4],
  ];
  return closedOutline([...EDGE, ...border].map((point) => inHeart(...point)));
}
