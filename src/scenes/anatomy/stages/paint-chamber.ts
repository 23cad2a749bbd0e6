/** A right atrium that is the pathway itself, opened from the front: its stretched wall around the blood, and the seam by which its roof is sewn to the pulmonary arteries. */

import { entryAt } from "../../../sim/checked/present.ts";
import type { Opening, Point } from "../../../sim/geometry/geometry.ts";
import { WALL } from "../../layers/fade.ts";
import { mix } from "../../theme/colour.ts";
import type { Theme } from "../../theme/theme.ts";
import type { Anatomy } from "../chest-anatomy.ts";
import type { Seen } from "../joined.ts";
import { paintEnd } from "../paint-graft.ts";
import { laidOver, scratch } from "../paint-tube.ts";
import { type Bounds, type Ink, strokes, trace, traceLoops } from "../painted-sheet.ts";
import { CLOTH, inside, roundOf, threadOf, tissue } from "../tones.ts";
import {
  arteriesOf,
  type Chambered,
  chamberedIn,
  closedOf,
  connectionOf,
  onOval,
  SEPTUM,
  sleeveOf,
  windowOf,
} from "./chamber-shape.ts";
import { type Cut, clearVeins, litAcross, paintCutMuscle, thinned } from "./cut-muscle.ts";
import { freeEdge, paintOutsideOf, paintRightGroove } from "./paint-right-groove.ts";
import { paintHiddenArtery, paintRim } from "./paint-roof-mouth.ts";
import { soften } from "./paint-tunnel-lining.ts";

/** mm of a 5-year-old: the stretched muscle, thinner at its roof; and where the tricuspid valve is missing. */
const MUSCLE = 2.3;
const ROOF = 2.1;
const FLOOR = 3.6;
/** degrees from the patient's left to the middle of the missing inlet, and how far it reaches to either side */
const INLET = -32;
const ABOUT = 24;
/** mm of a 5-year-old from a hole's outer end on, as far as anything lies before it */
const WAY = 13;
/** How much of the seam is seen through the blood. */
const THROUGH = 0.5;

/** 1 at the middle of the missing inlet, 0 away from it */
const atInlet = (degrees: number): number =>
  Math.cos(Math.min(1, Math.abs(degrees - INLET) / ABOUT) * (Math.PI / 2));

/** from the patient's left, anticlockwise */
const degreesOf = ([x, y]: Point, [a, b]: Point): number => (Math.atan2(y / b, x / a) * 180) / Math.PI;

export function paintChamber(
  ink: Ink,
  bounds: Bounds,
  { frame: around, heart }: Anatomy,
  { outlines: { seen, lumen = [] }, saturations, theme }: Seen,
): void {
  const frame = chamberedIn(around);
  if (!frame) return;
  const { chamber, scale: s } = frame;
  const own = scratch(ink, bounds);
  const takeOut = (loops: readonly (readonly Point[])[]) => {
    own.globalCompositeOperation = "destination-out";
    for (const loop of loops) {
      trace(own, loop, true);
      own.fill();
    }
    own.globalCompositeOperation = "source-over";
  };
  const edges = closedOf(frame, lumen).map((edge) => windowOf(frame, edge));
  paintRightGroove(own, frame, heart, roundOf(saturations.arterial, theme), theme);
  paintOutsideOf(own, frame, theme);
  own.globalCompositeOperation = "source-atop";
  const arteries = arteriesOf(frame, lumen);
  for (const sign of [1, -1])
    paintHiddenArtery(
      own,
      arteries.filter(([place]) => sign * (place?.[0] ?? 0) > 0),
      s,
      theme,
    );
  own.globalCompositeOperation = "source-over";
  takeOut(closedOf(frame, seen).map((edge) => windowOf(frame, edge)));
  paintWall(own, frame, edges, theme);
  takeOut(edges);
  paintCutPatch(own, chamber, s, theme);
  if (frame.hole) paintWay(own, frame.hole, s, theme);
  // It lies before the right artery.
  ink.save();
  traceLoops(ink, seen);
  ink.clip();
  soften(
    ink,
    freeEdge(frame).filter(([, y]) => y > 0),
    5 * s,
    mix(inside(theme).edge, "#000000", 0.4),
  );
  ink.restore();
  laidOver(ink, own, bounds);
  ink.globalAlpha = THROUGH;
  paintRim(ink, connectionOf(frame, lumen), s, theme);
  ink.globalAlpha = 1;
}

/** Over the veins' own wall it grows thin as a sleeve; the arteries come out from behind it. */
function paintWall(ink: Ink, frame: Chambered, edges: readonly (readonly Point[])[], theme: Theme): void {
  const { chamber, scale: s, hole } = frame;
  const [a, b] = chamber;
  const lit = litAcross(ink, [-0.7 * a, 0.9 * b], [0.8 * a, -0.9 * b], theme);
  const sleeveAt = sleeveOf(frame);
  const cutAt = (at: Point): Cut => {
    const sleeve = sleeveAt(at);
    const degrees = degreesOf(at, chamber);
    const roof = Math.min(1, Math.max(0, (2 * at[1]) / b - 0.6));
    const whole = s * (MUSCLE - (MUSCLE - ROOF) * roof + (FLOOR - MUSCLE) * atInlet(degrees));
    const none = Math.abs(degrees - SEPTUM.at) < SEPTUM.half || (hole && inHole(at, hole));
    return { at, thick: none ? 0 : thinned(whole, sleeve), sleeve };
  };
  for (const edge of edges) {
    const cuts = edge.map(cutAt);
    cuts.push(entryAt(cuts, 0));
    paintCutMuscle(ink, cuts, s, lit, tissue("atrium", theme));
    clearVeins(ink, cuts);
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
