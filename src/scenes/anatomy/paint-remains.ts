/** What the staged operations leave of the normal heart: the oversewn pulmonary trunk and the right atrium's appendage. */
import { entryAt } from "../../sim/checked/present.ts";
import { band, closedOutline, line, spotAt } from "../../sim/geometry/centreline.ts";
import type { Point } from "../../sim/geometry/geometry.ts";
import type { Theme } from "../theme/theme.ts";
import type { Tube } from "./great-vessels.ts";
import type { HeartShape } from "./heart-shape.ts";
import { stitches } from "./paint-graft.ts";
import { paintOrgan } from "./paint-organ.ts";
import { bandOf, laidOver, paintTube, scratch } from "./paint-tube.ts";
import { boundsOf, type Ink, strokes, trace } from "./painted-sheet.ts";
import { smoothLine } from "./placing.ts";
import { emptied, threadOf, tissue } from "./tones.ts";

/** By the ventricle's own lengths: along from its base, across towards the patient's right. */
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

export const remainsOutline = ({ at, trunk }: HeartShape): readonly Point[] => [
  ...APPENDAGE.map((point) => at(...point)),
  ...band(trunk.line, trunk.from, trunk.to),
];

export function paintAppendage(ink: Ink, { at, size }: HeartShape, theme: Theme): void {
  const outline = closedOutline(APPENDAGE.map((point) => at(...point)));
  paintOrgan(ink, outline, tissue("atrium", theme), { depth: 3 * size, edge: 0.5 * size });
}

/** Beside the aorta. */
export function paintTrunk(ink: Ink, { at, trunk, size }: HeartShape, theme: Theme): void {
  const tones = emptied(theme);
  const bounds = boundsOf([trunk.line], 14 * size);
  const own = scratch(ink, bounds);
  paintTube(own, trunk, tones, 0.6 * size);
  // Its ring, cut as the aortic root's beside it.
  const foot = acrossTrunk(trunk, 0, -0.1);
  own.lineCap = "butt";
  strokes(own, foot, size, [
    [2.2, tones.wall],
    [1.4, tones.light],
  ]);
  stitches(own, acrossTrunk(trunk, 0.86, 0.3), 0.8 * size, threadOf(theme));
  ink.save();
  // It throws no shadow into the ventricle.
  const base: readonly Point[] = [
    [0.4, -30],
    [0.4, 30],
    [-60, 30],
    [-60, -30],
  ];
  trace(
    ink,
    base.map((point) => at(...point)),
    true,
  );
  ink.clip();
  laidOver(ink, own, bounds, 1.6 * size);
  ink.restore();
}

/** From side to side at a part of its way; the middle lies higher or lower by a part of the width. */
function acrossTrunk(trunk: Tube, part: number, bow: number): readonly Point[] {
  const whole = line(trunk.line);
  const { at, along } = spotAt(whole, part);
  const outline = bandOf(whole, trunk, { part: 1 });
  const i = Math.round(part * (whole.points.length - 1));
  const [left, right] = [entryAt(outline, i), entryAt(outline, outline.length - 1 - i)];
  const rise = bow * Math.hypot(right[0] - left[0], right[1] - left[1]);
  return smoothLine([left, [at[0] + rise * along[0], at[1] + rise * along[1]], right]);
}
