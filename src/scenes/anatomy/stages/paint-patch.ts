/** A lateral tunnel, opened from the front: the atrium's own free wall towards the patient's right, a baffle of fabric within the atrium towards the left. */
import { entryAt, lastOf } from "../../../sim/checked/present.ts";
import type { Opening, Point } from "../../../sim/geometry/geometry.ts";
import { WALL } from "../../layers/fade.ts";
import { mix } from "../../theme/colour.ts";
import type { Theme } from "../../theme/theme.ts";
import type { Graft } from "../graft-course.ts";
import { castShadow, laidOver, scratch } from "../paint-tube.ts";
import { boundsOf, type Ink, strokes, trace } from "../painted-sheet.ts";
import { CLOTH, tissue } from "../tones.ts";
import { type Cut, clearVeins, litAcross, paintCutMuscle, thinned } from "./cut-muscle.ts";
import { runningSuture } from "./running-suture.ts";
import { across, outsideOf } from "./tunnel-shape.ts";

/** mm of a 5-year-old: the free wall's muscle, and the way over which it grows thin below, on the vein. */
const FREE_WALL = 3.8;
const SLEEVE = 13;
/** and the fabric, drawn thicker than it is */
const FABRIC = 2;

export function paintPatch(ink: Ink, graft: Graft, size: number, theme: Theme): void {
  const { body, fold } = CLOTH[theme.name];
  paintFreeWall(ink, graft, size, theme);
  const inner = across(graft, 1, -0.1 * size);
  const cut = across(graft, 1, FABRIC * size);
  const outer = outsideOf(graft, FABRIC * size, size);
  // Beyond its edge its outside turns away from the light into the atrium.
  trace(ink, [...outer, ...[...inner].reverse()], true);
  ink.save();
  castShadow(ink, 2.4 * size * ink.getTransform().a);
  ink.fillStyle = mix(body, fold, 0.7);
  ink.fill();
  ink.restore();
  trace(ink, [...cut, ...[...inner].reverse()], true);
  ink.fillStyle = mix(body, "#ffffff", 0.55);
  ink.fill();
  for (const edge of [outer, cut, inner]) strokes(ink, edge, size, [[0.4, mix(fold, "#000000", 0.3)]]);
  // The atrium's front wall, which is cut away, was sewn to it from one vein's mouth to the other's.
  runningSuture(ink, across(graft, 1, 0.5 * FABRIC * size), 1.1 * size, theme);
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

/** A hole punched in the baffle, from its cut edge on: blood passes through it, and the atrium behind is seen. */
export function paintHole(ink: Ink, hole: Opening, size: number, theme: Theme): void {
  const { body, fold } = CLOTH[theme.name];
  const [x, y] = hole.centre;
  const [nx, ny] = hole.normal;
  const half = hole.width / 2;
  const at = (out: number, along: number): Point => [x + out * nx - along * ny, y + out * ny + along * nx];
  /** half of a round hole that is seen aslant beyond the cut edge */
  const rim = (more: number): readonly Point[] => [
    at(-WALL, half + more),
    ...Array.from({ length: 25 }, (_, i) => {
      const turn = (Math.PI * i) / 24;
      return at(0.7 * (half + more) * Math.sin(turn), (half + more) * Math.cos(turn));
    }),
    at(-WALL, -half - more),
  ];
  trace(ink, rim(0.9 * size), true);
  ink.fillStyle = body;
  ink.fill();
  ink.save();
  ink.globalCompositeOperation = "destination-out";
  trace(ink, rim(0), true);
  ink.fill();
  ink.restore();
  for (const more of [0.9 * size, 0]) strokes(ink, rim(more), size, [[0.45, fold]]);
}
