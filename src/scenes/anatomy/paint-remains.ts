/** What the staged operations leave of the normal heart: the oversewn pulmonary trunk and the right atrium's appendage. */

import { closedOutline } from "../../sim/geometry/centreline.ts";
import type { Point } from "../../sim/geometry/geometry.ts";
import type { Theme } from "../theme/theme.ts";
import type { HeartShape } from "./heart-shape.ts";
import { paintOrgan } from "./paint-organ.ts";
import { type Ink, trace } from "./painted-sheet.ts";
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
  const organ = (points: readonly Point[], kind: "atrium") => {
    const outline = closedOutline(
      points.map((point) => at(...point)),
      8,
    );
    paintOrgan(ink, outline, tissue(kind, theme), { depth: 3 * size, edge: 0.5 * size });
  };
  organ(APPENDAGE, "atrium");
  organ(TRUNK, "atrium");
  paintOversewn(ink, at, size, theme);
}

/** A running suture that closes the dome from one side to the other. */
function paintOversewn(ink: Ink, at: HeartShape["at"], size: number, theme: Theme): void {
  const seam = smoothLine(CLOSED, STITCHES);
  trace(
    ink,
    seam.map((point) => at(...point)),
  );
  ink.lineWidth = 0.4 * size;
  ink.strokeStyle = tissue("atrium", theme).edge;
  ink.stroke();
  ink.strokeStyle = threadOf(theme);
  for (const [x, y] of seam) {
    trace(ink, [at(x - 0.7, y - 0.7), at(x + 0.7, y + 0.7)]);
    ink.stroke();
  }
}

const STITCHES = 4;
