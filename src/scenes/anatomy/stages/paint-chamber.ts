/** A right atrium that is the pathway itself, opened from the front: its stretched wall around the blood, and the seams by which its roof is sewn to the pulmonary arteries. */

import { entryAt } from "../../../sim/checked/present.ts";
import type { ChestFrame, Opening, Point } from "../../../sim/geometry/geometry.ts";
import { spots } from "../../drawing/curve-drawing.ts";
import { WALL } from "../../layers/fade.ts";
import type { Theme } from "../../theme/theme.ts";
import type { Anatomy } from "../chest-anatomy.ts";
import type { HeartShape } from "../heart-shape.ts";
import { paintOrgan } from "../paint-organ.ts";
import { laidOver, scratch } from "../paint-tube.ts";
import { type Bounds, type Ink, type Outlines, strokes, trace } from "../painted-sheet.ts";
import { smoothLine } from "../placing.ts";
import { tissue } from "../tones.ts";
import { connectionOf, INNER, type Loops, muscleOf, rounded, sideWall } from "./chamber-shape.ts";
import { type Cut, clearVeins, litAcross, paintCutMuscle, thinned } from "./cut-muscle.ts";
import { paintRim } from "./paint-chamber-lining.ts";

/** mm of a 5-year-old: the atrium's muscle, thinner at its roof; and where the tricuspid valve is missing. */
const MUSCLE = 3.8;
const ROOF = 2.5;
const FLOOR = 5.6;
/** degrees from the patient's left to the middle of the missing inlet, and how far it reaches to either side */
const INLET = -32;
const ABOUT = 36;
/** mm of a 5-year-old from a hole's outer end on, as far as anything lies before it */
const WAY = 13;
/** How much of the opening's rim is seen through the blood. */
const THROUGH = 0.7;

/** 1 at the middle of the missing inlet, 0 away from it */
const atInlet = (degrees: number): number =>
  Math.cos(Math.min(1, Math.abs(degrees - INLET) / ABOUT) * (Math.PI / 2));

/** from the patient's left, anticlockwise */
const degreesOf = ([x, y]: Point, [a, b]: Point): number => (Math.atan2(y / b, x / a) * 180) / Math.PI;

export function paintChamber(
  ink: Ink,
  bounds: Bounds,
  { frame: { chamber, ...rest }, heart }: Anatomy,
  { seen, lumen = [] }: Outlines,
  theme: Theme,
): void {
  if (!chamber) return;
  const frame = { ...rest, chamber };
  const s = frame.scale;
  const own = scratch(ink, bounds);
  const takeOut = (loops: Loops) => {
    own.globalCompositeOperation = "destination-out";
    for (const loop of loops) {
      trace(own, rounded(loop, INNER), true);
      own.fill();
    }
    own.globalCompositeOperation = "source-over";
  };
  paintGroove(own, chamber, heart, s, theme);
  takeOut(seen);
  paintWall(own, frame, lumen, theme);
  takeOut(lumen);
  if (frame.hole) paintWay(own, frame.hole, s, theme);
  const { mouths, rim } = connectionOf(frame, lumen);
  const look = tissue("atrium", theme);
  // Beneath the cut wall, into which it goes over at both of its ends.
  for (const mouth of mouths)
    strokes(ink, sideWall(mouth, s), s, [
      [2 * ROOF, look.edge],
      [2 * ROOF - 0.7, look.shade],
      [1.5 * ROOF, look.body],
      [0.6 * ROOF, look.light],
    ]);
  laidOver(ink, own, bounds);
  ink.globalAlpha = THROUGH;
  paintRim(ink, rim, s, theme);
  ink.globalAlpha = 1;
}

/** The heart's edge beside the groove, along and across, from its lower end up to the aorta. */
const SHOULDER = spots("-2 34, 2 30.4, -3.4 26.6, -6 20, -4 13");

/** Fat between the floor that has no valve and the ventricle, with a coronary artery cut across. */
function paintGroove(ink: Ink, [a, b]: Point, heart: HeartShape, s: number, theme: Theme): void {
  const fat = tissue("sac", theme);
  const on = (degrees: number, out: number): Point => {
    const turn = (degrees * Math.PI) / 180;
    return [(a + out * s) * Math.cos(turn), (b + out * s) * Math.sin(turn)];
  };
  const along = Array.from({ length: 41 }, (_, i) => on(INLET + ABOUT * (i / 20 - 1), 0));
  const outer = smoothLine([on(INLET - ABOUT, 1), ...SHOULDER.map((point) => heart.at(...point))]);
  paintOrgan(
    ink,
    [...outer, ...along.reverse()],
    { ...fat, light: fat.body },
    {
      depth: 3 * s,
      edge: 0.5 * s,
    },
  );
  const [x, y] = on(INLET - 9, 5 + FLOOR);
  const wall = tissue("atrium", theme);
  for (const [reach, colour] of [
    [1.9, wall.edge],
    [1.5, wall.light],
    [0.9, wall.shade],
  ] as const) {
    ink.beginPath();
    ink.arc(x, y, reach * s, 0, 2 * Math.PI);
    ink.fillStyle = colour;
    ink.fill();
  }
}

/** Over the veins' own wall it grows thin as a sleeve; on the arteries it ends at the seam. */
function paintWall(
  ink: Ink,
  frame: ChestFrame & { readonly chamber: Point },
  lumen: Loops,
  theme: Theme,
): void {
  const { chamber, scale: s, hole } = frame;
  const [a, b] = chamber;
  const lit = litAcross(ink, [-0.7 * a, 0.9 * b], [0.8 * a, -0.9 * b], theme);
  const muscle = muscleOf(frame, lumen);
  const cutAt = (at: Point): Cut => {
    const { on, sleeve } = muscle(at);
    const roof = Math.min(1, Math.max(0, (2 * at[1]) / b - 0.6));
    const whole = MUSCLE - (MUSCLE - ROOF) * roof + (FLOOR - MUSCLE) * atInlet(degreesOf(at, chamber));
    return { at, thick: hole && inHole(at, hole) ? 0 : on * thinned(s * whole, sleeve), sleeve };
  };
  for (const loop of lumen) {
    const cuts = rounded(loop, INNER).map(cutAt);
    cuts.push(entryAt(cuts, 0));
    paintCutMuscle(ink, cuts, s, lit, tissue("atrium", theme));
    clearVeins(ink, cuts);
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
