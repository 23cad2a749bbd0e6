/** The right atrium from outside, closed, beside a conduit. */
import { entryAt, lastOf } from "../../sim/checked/present.ts";
import type { Point } from "../../sim/geometry/geometry.ts";
import type { Theme } from "../theme/theme.ts";
import type { Anatomy } from "./chest-anatomy.ts";
import { stitches } from "./paint-graft.ts";
import { paintOrgan } from "./paint-organ.ts";
import { laidOver, scratch } from "./paint-tube.ts";
import { type Bounds, eraseAlong, type Ink, strokes } from "./painted-sheet.ts";
import { threadOf, tissue } from "./tones.ts";

export function paintRightAtrium(ink: Ink, { rightAtrium, frame: { scale } }: Anatomy, theme: Theme): void {
  if (rightAtrium.length === 0) return;
  paintOrgan(ink, rightAtrium, tissue("atrium", theme), { depth: 4 * scale, edge: 0.7 * scale });
  // Below, where the vein was cut off it, it is sewn over.
  const low = Math.min(...rightAtrium.map(([, y]) => y)) + SEWN * scale;
  const end = rightAtrium.filter(([, y]) => y < low);
  stitches(
    ink,
    end.map(([x, y]): Point => [x, y + 1.4 * scale]),
    0.9 * scale,
    threadOf(theme),
  );
}

/** mm of a 5-year-old from its end, over which the seam runs round */
const SEWN = 3;

/** Over the aorta's root; towards its neck it goes over into the atrium without an edge. */
export function paintRightAppendage(
  ink: Ink,
  bounds: Bounds,
  { rightAppendage, frame: { scale } }: Anatomy,
  theme: Theme,
): void {
  if (rightAppendage.length === 0) return;
  const look = tissue("atrium", theme);
  const own = scratch(ink, bounds);
  paintOrgan(own, rightAppendage, look, { depth: 3 * scale, walled: rightAppendage });
  strokes(own, rightAppendage, scale, [[0.6, look.edge]]);
  const [[ax, ay], [bx, by]] = [entryAt(rightAppendage, 0), lastOf(rightAppendage)];
  const out = (NECK * scale) / Math.hypot(bx - ax, by - ay);
  const room: Bounds = [ax - 20 * scale, by - 9 * scale, ax + 20 * scale, ay + 9 * scale];
  eraseAlong(own, [ax + out * (ay - by), ay - out * (ax - bx)], [ax, ay], room);
  laidOver(ink, own, bounds, 2.4 * scale);
}

/** mm of a 5-year-old over which it comes out of the atrium */
const NECK = 1.6;
