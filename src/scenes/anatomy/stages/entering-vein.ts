/** The great veins at a common atrium: the inferior vena cava goes over into its floor, and on its roof the superior one was cut off and sewn over. */
import { entryAt, lastOf, present } from "../../../sim/checked/present.ts";
import type { Point } from "../../../sim/geometry/geometry.ts";
import type { Theme } from "../../theme/theme.ts";
import type { Anatomy } from "../chest-anatomy.ts";
import { paintOrgan } from "../paint-organ.ts";
import { type Ink, strokes, trace } from "../painted-sheet.ts";
import { smoothLine } from "../placing.ts";
import { tissue } from "../tones.ts";
import { runningSuture } from "./running-suture.ts";

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
  fall.addColorStop(0, `${ground}00`);
  fall.addColorStop(1, ground);
  ink.save();
  ink.lineCap = "butt";
  for (const side of [right, left])
    strokes(ink, side, size, [
      [4.4, look.shade],
      [3.4, look.body],
    ]);
  const [inX, inY] = entryAt(left, 0);
  trace(ink, [...right, ...[...left].reverse(), [inX, inY + 1.4 * size]], true);
  ink.fillStyle = fall;
  ink.fill();
  for (const side of [right, left]) strokes(ink, side, size, [[0.5, look.light]]);
  ink.restore();
}

/** Drawn over the vein, whose end clears into the atrium. */
export function paintFloor(ink: Ink, anatomy: Anatomy): void {
  const { frame, heart } = anatomy;
  if (!frame.lowerVein) return;
  const { size } = heart;
  const [x, y] = lastOf(frame.lowerVein);
  const half = frame.ivc.width / 2 + 4 * frame.scale;
  const fall = ink.createLinearGradient(0, y - 0.68 * NECK * size, 0, y - 0.25 * NECK * size);
  fall.addColorStop(0, "#0000");
  fall.addColorStop(1, "#000");
  ink.save();
  ink.globalCompositeOperation = "destination-out";
  ink.fillStyle = fall;
  ink.fillRect(x - half, y - NECK * size, 2 * half, (NECK + 4) * size);
  ink.restore();
}

/** Before the vein's mouth stands a thin fold (Eustachian valve). */
export function paintEustachianValve(ink: Ink, { frame, heart: { size } }: Anatomy, theme: Theme): void {
  const [x, y] = lastOf(present(frame.lowerVein));
  const look = tissue("atrium", theme);
  const reach = frame.ivc.width / 2;
  const fold = (down: number): Point[] =>
    smoothLine([
      [x - reach - 0.6 * size, y + 0.6 * size],
      [x - 0.45 * reach, y - down * size],
      [x + 0.45 * reach, y - (down + 0.9) * size],
      [x + reach - 0.2 * size, y - 2.6 * size],
    ]);
  const edge = fold(1.4);
  trace(ink, [...edge, ...fold(3.3).reverse()], true);
  ink.globalAlpha = 0.5;
  ink.fillStyle = look.body;
  ink.fill();
  ink.globalAlpha = 0.9;
  strokes(ink, edge, size, [
    [0.7, look.edge],
    [0.4, look.light],
  ]);
  ink.globalAlpha = 1;
}

/** mm of a 5-year-old's heart by which the closed dome stands above the roof, and where its seam runs. */
const [DOME, SEAM] = [5.4, 3.2];

/** What is left of the superior vena cava on the roof: a low dome, oversewn. */
export function paintStump(ink: Ink, { frame, heart: { size, atrium } }: Anatomy, theme: Theme): void {
  const s = frame.scale;
  const look = tissue("atrium", theme);
  const half = 0.5 * frame.svc.width;
  const roofAt = (x: number): number =>
    Math.max(...atrium.filter(([at]) => Math.abs(at - x) < 2.5 * s).map(([, y]) => y));
  const foot = Math.min(roofAt(-half), roofAt(half));
  const place = (across: number, up: number): Point => [across * half, foot + up * size];
  const dome = smoothLine([
    place(-1.12, -0.4),
    place(-1.06, 1.2),
    place(-0.96, 2.8),
    place(-0.66, 4.6),
    place(0, DOME),
    place(0.66, 4.6),
    place(0.96, 2.8),
    place(1.06, 1.2),
    place(1.12, -0.4),
  ]);
  ink.save();
  ink.beginPath();
  ink.rect(-3 * half, foot + 0.5 * size, 6 * half, 12 * size);
  ink.clip();
  paintOrgan(ink, [...dome, place(1.12, -3), place(-1.12, -3)], look, { depth: 2.4 * s, walled: dome });
  strokes(ink, dome, s, [[0.6, look.edge]]);
  ink.restore();
  const seam = smoothLine([
    place(-0.94, SEAM - 1),
    place(-0.5, SEAM),
    place(0, SEAM + 0.3),
    place(0.5, SEAM),
    place(0.94, SEAM - 1),
  ]);
  strokes(ink, seam, s, [
    [1.9, look.shade],
    [1.3, look.light],
  ]);
  runningSuture(ink, seam, s, theme);
}
