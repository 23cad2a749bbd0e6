/** A lateral tunnel, opened from the front: the atrium's own free wall towards the patient's right, a baffle of fabric within the atrium towards the left. */
import { entryAt, lastOf } from "../../../sim/checked/present.ts";
import type { Opening, Point } from "../../../sim/geometry/geometry.ts";
import { mix } from "../../theme/colour.ts";
import type { Theme } from "../../theme/theme.ts";
import type { Graft } from "../graft-course.ts";
import { laidOver, scratch } from "../paint-tube.ts";
import { boundsOf, type Ink, strokes, trace } from "../painted-sheet.ts";
import { CLOTH, tissue } from "../tones.ts";
import { type Cut, clearVeins, litAcross, paintCutMuscle, thinned } from "./cut-muscle.ts";
import { across, cutFaceOf, holeOf } from "./tunnel-shape.ts";

/** mm of a 5-year-old: the free wall's muscle, and the way over which it grows thin below, on the vein. */
const FREE_WALL = 3.8;
const SLEEVE = 13;

export function paintPatch(ink: Ink, graft: Graft, size: number, theme: Theme): void {
  const { body, fold } = CLOTH[theme.name];
  paintFreeWall(ink, graft, size, theme);
  const [inner = [], middle = [], cut = []] = cutFaceOf(graft, size);
  trace(ink, [...cut, ...[...inner].reverse()], true);
  ink.fillStyle = mix(body, "#ffffff", 0.7);
  ink.fill();
  for (const edge of [cut, inner]) strokes(ink, edge, size, [[0.4, mix(fold, "#000000", 0.35)]]);
  strokes(ink, middle, size, [[0.3, fold]]);
}

/** From the inferior to the superior vena cava it is the heart's right border; below it grows thin on the vein, above it is sewn to the artery. */
function paintFreeWall(ink: Ink, graft: Graft, size: number, theme: Theme): void {
  const [[fromX, fromY], [onX, onY]] = [entryAt(across(graft, -1), 0), entryAt(across(graft, -1), 3)];
  // Its sleeve begins on the vein below.
  const below = Array.from({ length: 12 }, (_, i): Point => {
    const back = ((12 - i) * 0.6 * size) / Math.hypot(onX - fromX, onY - fromY);
    return [fromX, fromY - back * (onY - fromY)];
  });
  const inner = [...below, ...across(graft, -1)];
  const bounds = boundsOf([inner], 2 * FREE_WALL * size);
  const own = scratch(ink, bounds);
  const [low, above] = [entryAt(inner, 0), lastOf(inner)];
  const cuts = inner.map((at): Cut => {
    const sleeve = Math.min(1, Math.max(0, 1 - (at[1] - low[1]) / (SLEEVE * size)));
    return { at, thick: thinned(FREE_WALL * size, sleeve), sleeve };
  });
  const lit = litAcross(own, [above[0] - 8 * size, above[1]], [low[0] + 8 * size, low[1]], theme);
  paintCutMuscle(own, cuts, size, lit, tissue("atrium", theme));
  clearVeins(own, cuts);
  own.globalCompositeOperation = "destination-out";
  const [x, y] = low;
  trace(own, [[x, y - 9 * size], ...inner, ...[...across(graft, 0)].reverse()], true);
  own.fill();
  own.fillRect(bounds[0], above[1], bounds[2] - bounds[0], bounds[3] - above[1]);
  laidOver(ink, own, bounds);
}

/** A hole punched in the fabric: blood passes through it into the atrium. */
export function paintHole(ink: Ink, hole: Opening, size: number, theme: Theme): void {
  const { body, fold } = CLOTH[theme.name];
  ink.save();
  ink.globalCompositeOperation = "destination-out";
  trace(ink, holeOf(hole, size), true);
  ink.fill();
  ink.restore();
  strokes(ink, holeOf(hole, size, 0.4 * size), size, [
    [1.5, mix(fold, "#000000", 0.35)],
    [0.9, mix(body, "#ffffff", 0.7)],
  ]);
}
