/** The great veins at a common atrium: the inferior vena cava goes over into its floor, and on its roof the superior one was cut off and sewn over. */
import { entryAt, lastOf, present } from "../../../sim/checked/present.ts";
import type { Point } from "../../../sim/geometry/geometry.ts";
import { seeThrough } from "../../theme/colour.ts";
import type { Theme } from "../../theme/theme.ts";
import type { Anatomy } from "../chest-anatomy.ts";
import { paintClosedEnd } from "../paint-remains.ts";
import { laidOver, scratch } from "../paint-tube.ts";
import { type Bounds, boundsOf, eraseAlong, type Ink, strokes, trace } from "../painted-sheet.ts";
import { smoothLine } from "../placing.ts";
import { tissue } from "../tones.ts";

/** mm of a 5-year-old's heart below the vein's end, over which its wall goes over into the atrium's. */
const NECK = 14;

/** Both sides of the neck from the atrium down to the vein, mm. */
function sidesOf({ frame }: Anatomy): readonly [right: readonly Point[], left: readonly Point[]] {
  const { heartScale: h, ivc } = frame;
  const [x, y] = lastOf(present(frame.lowerVein));
  const half = ivc.width / 2;
  const side = (sign: 1 | -1, points: readonly Point[]) =>
    smoothLine(points.map(([out, up]): Point => [x + sign * (half + out * h), y + up * h]));
  return [
    side(-1, [
      [5.17, 7],
      [2.9, 3.3],
      [0.8, -0.8],
      [-0.1, -6],
      [-2, -NECK],
    ]),
    side(1, [
      [11, 1.4],
      [7.4, -1],
      [4.4, -2],
      [2.4, -2.5],
      [0.8, -4],
      [-0.2, -7],
      [-2, -NECK],
    ]),
  ];
}

/** The atrium's wall turns down into the vein's, and its room goes on into it. @param ground colour of the atrium's blood */
export function paintNeck(ink: Ink, anatomy: Anatomy, ground: string, theme: Theme): void {
  const { size } = anatomy.heart;
  const look = tissue("atrium", theme);
  const [right, left] = sidesOf(anatomy);
  const [, y] = lastOf(right);
  const fall = ink.createLinearGradient(0, y, 0, y + 0.6 * NECK * size);
  fall.addColorStop(0, seeThrough(ground, 0));
  fall.addColorStop(1, ground);
  const bounds = boundsOf([right, left], 4 * size);
  const own = scratch(ink, bounds);
  for (const side of [right, left])
    strokes(own, side, size, [
      [4.4, look.shade],
      [3.4, look.body],
    ]);
  const [inX, inY] = entryAt(left, 0);
  trace(own, [...right, ...[...left].reverse(), [inX, inY + 1.4 * size]], true);
  own.fillStyle = fall;
  own.fill();
  for (const side of [right, left]) strokes(own, side, size, [[0.5, look.light]]);
  // Further down there is the vein's own wall.
  eraseAlong(own, [0, y + 0.55 * NECK * size], [0, y + 0.11 * NECK * size], bounds);
  laidOver(ink, own, bounds);
}

/** Drawn over the vein, whose end clears into the atrium. */
export function paintFloor(ink: Ink, anatomy: Anatomy): void {
  const { frame, heart } = anatomy;
  if (!frame.lowerVein) return;
  const { size } = heart;
  const [x, y] = lastOf(frame.lowerVein);
  const half = frame.ivc.width / 2 + 4 * frame.scale;
  const room: Bounds = [x - half, y - 1.2 * NECK * size, x + half, y + 4 * size];
  eraseAlong(ink, [0, y - 0.9 * NECK * size], [0, y], room);
}

/** At the right side of the vein's mouth stands a thin fold (Eustachian valve): a sickle that runs out towards the septum. */
export function paintEustachianValve(ink: Ink, { frame, heart: { size } }: Anatomy, theme: Theme): void {
  const [x, y] = lastOf(present(frame.lowerVein));
  const look = tissue("atrium", theme);
  const half = frame.ivc.width / 2;
  const placed = (way: readonly Point[]) =>
    smoothLine(way.map(([across, up]): Point => [x + across * half, y + up * size]));
  const edge = placed([
    [-1.35, 3],
    [-0.8, 1.2],
    [-0.1, -0.4],
    [0.7, -2.2],
  ]);
  const foot = placed([
    [-1.3, -0.6],
    [-0.85, -2.6],
    [-0.1, -3.4],
    [0.7, -2.2],
  ]);
  ink.save();
  trace(ink, [...edge, ...foot.reverse()], true);
  ink.globalAlpha = 0.6;
  ink.fillStyle = look.body;
  ink.fill();
  ink.globalAlpha = 0.9;
  strokes(ink, edge, size, [
    [0.6, look.shade],
    [0.3, look.light],
  ]);
  ink.restore();
}

/** mm of a 5-year-old's heart by which the closed end stands above the roof, and from how far below it that comes. */
const [DOME, FOOT] = [6.6, 7];

/** What is left of the superior vena cava on the roof: a short vein, closed edge to edge. */
export function paintStump(ink: Ink, { frame, heart: { size, atrium } }: Anatomy, theme: Theme): void {
  const half = 0.5 * frame.svc.width;
  const roofAt = (x: number): number =>
    Math.max(...atrium.filter(([at]) => Math.abs(at - x) < 2.5 * frame.scale).map(([, y]) => y));
  const roof = Math.min(roofAt(-half), roofAt(half));
  const way = [-FOOT, -2, 2, DOME].map((up): Point => [0, roof + up * size]);
  const tube = { name: "", line: smoothLine(way, 20), from: 2 * half, to: 1.7 * half, dome: 0.24 };
  const bounds = boundsOf([tube.line], 14 * size);
  const own = scratch(ink, bounds);
  paintClosedEnd(own, tube, size, theme);
  eraseAlong(own, [0, roof + 0.6 * size], [0, roof - 1.6 * size], bounds);
  laidOver(ink, own, bounds, 1.2 * size);
}
