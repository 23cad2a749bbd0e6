/** What the staged operations leave of the normal heart: the small second chamber, the oversewn pulmonary trunk on it, and the right atrium's appendage. */

import { closedOutline } from "../../sim/geometry/centreline.ts";
import type { Point } from "../../sim/geometry/geometry.ts";
import type { Theme } from "../theme/theme.ts";
import type { HeartShape } from "./heart-shape.ts";
import { paintOrgan } from "./paint-organ.ts";
import { type Ink, strokes, trace } from "./painted-sheet.ts";
import { smoothLine } from "./placing.ts";
import { threadOf, tissue } from "./tones.ts";

/** By the ventricle's own lengths: along from its base, across towards the patient's left. */
const CHAMBER: readonly Point[] = [
  [1.4, 20.4],
  [2.4, 24.8],
  [8, 28.6],
  [15, 29],
  [22, 26],
  [27.4, 20],
  [20, 22.6],
  [13, 23.6],
  [6, 22.8],
];
const TRUNK: readonly Point[] = [
  [3.4, 21],
  [-4, 20],
  [-10.6, 19.4],
  [-13.8, 20.8],
  [-14, 24],
  [-11.4, 26],
  [-4, 26.6],
  [4, 27.4],
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
/** On its border with the ventricle runs a coronary artery, which marks it off on the heart's surface (delimiting artery). */
const ARTERY: readonly Point[] = [
  [2, 20.4],
  [6, 22.4],
  [13, 23.3],
  [20, 22.4],
  [27.4, 19.4],
  [33, 14.6],
];
/** Where the trunk's end is sewn over. */
const CLOSED: readonly Point[] = [
  [-12, 20.4],
  [-12.7, 22.6],
  [-12, 24.8],
];

export const remainsOutline = ({ at }: HeartShape): readonly Point[] =>
  [...CHAMBER, ...TRUNK, ...APPENDAGE].map((point) => at(...point));

export function paintRemains(ink: Ink, { at, size }: HeartShape, theme: Theme): void {
  const organ = (points: readonly Point[], kind: "atrium" | "muscle") => {
    const outline = closedOutline(
      points.map((point) => at(...point)),
      8,
    );
    paintOrgan(ink, outline, tissue(kind, theme), { depth: 3 * size, edge: 0.5 * size });
  };
  organ(APPENDAGE, "atrium");
  organ(TRUNK, "atrium");
  organ(CHAMBER, "muscle");
  const muscle = tissue("muscle", theme);
  const artery = smoothLine(ARTERY.map((point) => at(...point)));
  strokes(ink, artery, size, [
    [1.3, muscle.shade],
    [0.7, muscle.edge],
  ]);
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
    trace(ink, [at(x - 0.9, y - 0.3), at(x + 0.9, y + 0.3)]);
    ink.stroke();
  }
}

const STITCHES = 3;
