/** A right atrium that is the pathway itself, opened from the front: its stretched wall around the blood, and the seams by which its roof is sewn to the pulmonary arteries. */

import { entryAt } from "../../../sim/checked/present.ts";
import type { Opening, Point } from "../../../sim/geometry/geometry.ts";
import { WALL } from "../../layers/fade.ts";
import { mix } from "../../theme/colour.ts";
import type { Theme } from "../../theme/theme.ts";
import type { Anatomy } from "../chest-anatomy.ts";
import type { Seen } from "../joined.ts";
import { paintEnd } from "../paint-graft.ts";
import { laidOver, scratch } from "../paint-tube.ts";
import { type Bounds, type Ink, strokes, trace } from "../painted-sheet.ts";
import { CLOTH, roundOf, threadOf, tissue } from "../tones.ts";
import {
  arterial,
  type Chambered,
  connectionOf,
  edgesOf,
  type Loops,
  onOval,
  SEPTUM,
  sleeveOf,
} from "./chamber-shape.ts";
import { type Cut, clearVeins, litAcross, paintCutMuscle, thinned } from "./cut-muscle.ts";
import { paintLip, paintSeam } from "./paint-chamber-lining.ts";
import { paintOutsideOf, paintRightGroove } from "./paint-right-groove.ts";

/** mm of a 5-year-old: the atrium's muscle, thinner at its roof; and where the tricuspid valve is missing. */
const MUSCLE = 3.8;
const ROOF = 2.5;
const FLOOR = 5.6;
/** degrees from the patient's left to the middle of the missing inlet, and how far it reaches to either side */
const INLET = -32;
const ABOUT = 24;
/** mm of a 5-year-old from a hole's outer end on, as far as anything lies before it */
const WAY = 13;
/** How much of the seam is seen through the blood. */
const THROUGH = 0.5;
/** mm of a 5-year-old over which the wall grows as thin as the artery to which it is sewn */
const SEWN = 6;

/** 1 at the middle of the missing inlet, 0 away from it */
const atInlet = (degrees: number): number =>
  Math.cos(Math.min(1, Math.abs(degrees - INLET) / ABOUT) * (Math.PI / 2));

/** from the patient's left, anticlockwise */
const degreesOf = ([x, y]: Point, [a, b]: Point): number => (Math.atan2(y / b, x / a) * 180) / Math.PI;

export function paintChamber(
  ink: Ink,
  bounds: Bounds,
  { frame: { chamber, ...rest }, heart }: Anatomy,
  { outlines: { seen, lumen = [] }, saturations, theme }: Seen,
): void {
  if (!chamber) return;
  const frame = { ...rest, chamber };
  const s = frame.scale;
  const own = scratch(ink, bounds);
  const takeOut = (loops: readonly (readonly Point[])[]) => {
    own.globalCompositeOperation = "destination-out";
    for (const loop of loops) {
      trace(own, loop, true);
      own.fill();
    }
    own.globalCompositeOperation = "source-over";
  };
  const edges = edgesOf(lumen);
  paintRightGroove(own, frame, heart, roundOf(saturations.arterial, theme), theme);
  paintOutsideOf(own, frame, theme);
  takeOut(edgesOf(seen));
  paintWall(own, frame, lumen, theme);
  takeOut(edges);
  paintCutPatch(own, chamber, s, theme);
  if (frame.hole) paintWay(own, frame.hole, s, theme);
  laidOver(ink, own, bounds);
  ink.globalAlpha = THROUGH;
  const { seam, lip } = connectionOf(frame, lumen);
  paintSeam(ink, seam, s, theme);
  paintLip(ink, lip, s, theme);
  ink.globalAlpha = 1;
}

/** Over the veins' own wall it grows thin as a sleeve; to the arteries it is sewn. */
function paintWall(ink: Ink, frame: Chambered, lumen: Loops, theme: Theme): void {
  const { chamber, scale: s, hole } = frame;
  const [a, b] = chamber;
  const lit = litAcross(ink, [-0.7 * a, 0.9 * b], [0.8 * a, -0.9 * b], theme);
  const [sleeveAt, inArtery] = [sleeveOf(frame), arterial(frame)];
  const { right, left } = connectionOf(frame, lumen);
  const on = onOval(chamber);
  const patch = [-1, 1].map((sign) => on(SEPTUM.at + sign * SEPTUM.half));
  const ends = [right.low, right.high, left.low, left.high, ...patch];
  const cutAt = (at: Point): Cut => {
    const sleeve = sleeveAt(at);
    const degrees = degreesOf(at, chamber);
    const roof = Math.min(1, Math.max(0, (2 * at[1]) / b - 0.6));
    const whole = s * (MUSCLE - (MUSCLE - ROOF) * roof + (FLOOR - MUSCLE) * atInlet(degrees));
    const far = Math.min(...ends.map(([x, y]) => Math.hypot(at[0] - x, at[1] - y)));
    const sewn = Math.max(0, 1 - far / (SEWN * s));
    const none = inArtery(at) || Math.abs(degrees - SEPTUM.at) < SEPTUM.half || (hole && inHole(at, hole));
    return { at, thick: none ? 0 : thinned(whole + (WALL - whole) * sewn, sleeve), sleeve };
  };
  for (const edge of edgesOf(lumen)) {
    const cuts = edge.map(cutAt);
    cuts.push(entryAt(cuts, 0));
    paintCutMuscle(ink, cuts, s, lit, tissue("atrium", theme));
    clearVeins(
      ink,
      cuts.map((cut) => (inArtery(cut.at) ? { ...cut, sleeve: 0 } : cut)),
    );
  }
}

/** The patch that closes the septum, where it is cut: beyond it is the left atrium. */
function paintCutPatch(ink: Ink, chamber: Point, size: number, theme: Theme): void {
  const { body, fold } = CLOTH[theme.name];
  const on = onOval(chamber);
  const along = (out: number): readonly Point[] =>
    Array.from({ length: 21 }, (_, i) => on(SEPTUM.at + SEPTUM.half * (i / 10 - 1), out));
  const [inner, outer] = [along(0), along(WALL)];
  trace(ink, [...inner, ...[...outer].reverse()], true);
  ink.fillStyle = mix(body, "#ffffff", 0.5);
  ink.fill();
  for (const edge of [inner, outer]) strokes(ink, edge, size, [[0.4, mix(fold, "#000000", 0.2)]]);
  for (const sign of [-1, 1]) {
    const [from, to] = [0, 1].map((out) => on(SEPTUM.at + sign * SEPTUM.half, out)) as [Point, Point];
    paintEnd(ink, from, [to[0] - from[0], to[1] - from[1]], size, threadOf(theme));
  }
}

/** On the lumen's edge, but through the wall. */
function inHole([x, y]: Point, { centre, normal, width }: Opening): boolean {
  const [dx, dy] = [x - centre[0], y - centre[1]];
  const aside = Math.abs(dy * normal[0] - dx * normal[1]);
  return dx * normal[0] + dy * normal[1] > 0.4 - WALL && aside < width / 2 + 1;
}

/** The hole goes through the whole wall and what lies on it. */
function paintWay(
  ink: Ink,
  { centre: [x, y], normal: [nx, ny], width }: Opening,
  s: number,
  theme: Theme,
): void {
  const half = width / 2;
  const side = (sign: 1 | -1): readonly Point[] =>
    [-WALL - 0.5 * s, WAY * s].map(
      (out): Point => [x + out * nx - sign * half * ny, y + out * ny + sign * half * nx],
    );
  const [one, other] = [side(-1), side(1)];
  ink.save();
  ink.globalCompositeOperation = "destination-out";
  trace(ink, [...one, ...[...other].reverse()], true);
  ink.fill();
  ink.globalCompositeOperation = "source-atop";
  for (const rim of [one, other]) strokes(ink, rim, s, [[0.8, tissue("atrium", theme).edge]]);
  ink.restore();
}
