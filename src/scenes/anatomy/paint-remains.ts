/** What the staged operations leave of the normal heart: the oversewn pulmonary trunk and the right atrium's appendage. */
import { closedOutline } from "../../sim/geometry/centreline.ts";
import type { Point } from "../../sim/geometry/geometry.ts";
import type { Theme } from "../theme/theme.ts";
import type { HeartShape } from "./heart-shape.ts";
import { stitches } from "./paint-graft.ts";
import { paintOrgan } from "./paint-organ.ts";
import { castShadow } from "./paint-tube.ts";
import { type Ink, strokes, trace } from "./painted-sheet.ts";
import { threadOf, tissue } from "./tones.ts";

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

export const remainsOutline = ({ at, trunk, conus }: HeartShape): readonly Point[] => [
  ...APPENDAGE.map((point) => at(...point)),
  ...trunk,
  ...conus.flat(),
];

export function paintAppendage(ink: Ink, { at, size }: HeartShape, theme: Theme): void {
  const outline = closedOutline(APPENDAGE.map((point) => at(...point)));
  paintOrgan(ink, outline, tissue("atrium", theme), { depth: 3 * size, edge: 0.5 * size });
}

/** Before the aorta. */
export function paintTrunk(ink: Ink, { trunk, conus, size }: HeartShape, theme: Theme): void {
  const look = tissue("atrium", theme);
  paintConus(ink, conus, size, theme);
  ink.save();
  castShadow(ink, 1.6 * size * ink.getTransform().a);
  trace(ink, trunk, true);
  ink.fillStyle = look.body;
  ink.fill();
  ink.restore();
  paintOrgan(ink, trunk, look, { depth: 3 * size, edge: 0.5 * size });
  const top = Math.max(...trunk.map(([, y]) => y));
  const closed = trunk.filter(([, y]) => y > top - 1.6 * size).map(([x, y]): Point => [x, y - 1.3 * size]);
  stitches(ink, closed, 0.8 * size, threadOf(theme));
}

/** The outlet that the window has taken away, as hidden lines. */
function paintConus(
  ink: Ink,
  [right = [], left = []]: HeartShape["conus"],
  size: number,
  theme: Theme,
): void {
  const look = tissue("muscle", theme);
  ink.save();
  trace(ink, [...right, ...[...left].reverse()], true);
  ink.fillStyle = look.body;
  ink.globalAlpha = 0.16;
  ink.fill();
  ink.globalAlpha = 0.75;
  ink.setLineDash([1.6 * size, 1.1 * size]);
  for (const edge of [right, left]) strokes(ink, edge, size, [[0.5, look.edge]]);
  ink.restore();
}
