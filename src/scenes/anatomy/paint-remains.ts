/** What the staged operations leave of the normal heart: the oversewn pulmonary trunk and the right atrium's appendage. */

import { closedOutline } from "../../sim/geometry/centreline.ts";
import type { Point } from "../../sim/geometry/geometry.ts";
import type { Theme } from "../theme/theme.ts";
import type { HeartShape } from "./heart-shape.ts";
import { stitches } from "./paint-graft.ts";
import { paintOrgan } from "./paint-organ.ts";
import type { Ink } from "./painted-sheet.ts";
import { smoothLine } from "./placing.ts";
import { threadOf, tissue } from "./tones.ts";

/** By the ventricle's own lengths: along from its base, across towards the patient's right. */
const TRUNK: readonly Point[] = [
  [-8, 2],
  [-11.4, -6.4],
  [-15, -15.4],
  [-18.4, -21.4],
  [-20, -22],
  [-26, -17],
  [-26, -15.4],
  [-22, -8],
  [-14, 0],
];
const APPENDAGE: readonly Point[] = [
  [-33, 2.4],
  [-35.5, 7],
  [-33, 11.5],
  [-29, 12],
  [-26.4, 15],
  [-22.6, 13.4],
  [-20.6, 9],
  [-23, 4],
  [-27, 0],
];
/** Where the trunk's end is sewn over. */
const CLOSED: readonly Point[] = [
  [-18.2, -20.6],
  [-21.6, -19],
  [-24.8, -15.6],
];

export const remainsOutline = ({ at }: HeartShape): readonly Point[] =>
  [...TRUNK, ...APPENDAGE].map((point) => at(...point));

export function paintRemains(ink: Ink, { at, size }: HeartShape, theme: Theme): void {
  for (const points of [APPENDAGE, TRUNK]) {
    const outline = closedOutline(points.map((point) => at(...point)));
    paintOrgan(ink, outline, tissue("atrium", theme), { depth: 3 * size, edge: 0.5 * size });
  }
  // A running suture closes the trunk's end.
  stitches(ink, smoothLine(CLOSED.map((point) => at(...point))), 0.8 * size, threadOf(theme));
}
