/** The right atrium from outside, closed, between a conduit and the heart. */
import { entryAt, lastOf } from "../../sim/checked/present.ts";
import type { Point } from "../../sim/geometry/geometry.ts";
import { mix } from "../theme/colour.ts";
import type { Theme } from "../theme/theme.ts";
import type { Anatomy } from "./chest-anatomy.ts";
import { stitches } from "./paint-graft.ts";
import { paintOrgan } from "./paint-organ.ts";
import { laidOver, scratch } from "./paint-tube.ts";
import { type Bounds, boundsOf, eraseAlong, type Ink, strokes } from "./painted-sheet.ts";
import { threadOf, tissue } from "./tones.ts";

export function paintRightAtrium(ink: Ink, { rightAtrium, frame: { scale } }: Anatomy, theme: Theme): void {
  if (!rightAtrium) return;
  const { outline, seams } = rightAtrium;
  const look = tissue("atrium", theme);
  const bounds = boundsOf([outline], 6 * scale);
  const own = scratch(ink, bounds);
  paintOrgan(
    own,
    outline,
    { ...look, body: mix(look.body, look.light, 0.35) },
    { depth: 5 * scale, edge: 0.4 * scale },
  );
  for (const seam of seams) {
    const shifted = (by: number) => seam.map(([x, y]): Point => [x + by * scale, y - by * scale]);
    // Both edges are turned in and stand up as a ridge.
    own.globalAlpha = 0.5;
    strokes(own, shifted(0.7), scale, [[1.8, look.shade]]);
    own.globalAlpha = 1;
    strokes(own, seam, scale, [[1.5, look.light]]);
    stitches(own, seam, 0.8 * scale, threadOf(theme));
  }
  laidOver(ink, own, bounds, 2 * scale);
}

/** Over the aorta's root; towards its neck it goes over into the atrium without an edge. */
export function paintRightAppendage(
  ink: Ink,
  bounds: Bounds,
  { rightAtrium, frame: { scale } }: Anatomy,
  theme: Theme,
): void {
  if (!rightAtrium) return;
  const { appendage, comb } = rightAtrium;
  const look = tissue("atrium", theme);
  const own = scratch(ink, bounds);
  paintOrgan(own, appendage, look, { depth: 3 * scale, walled: appendage });
  own.globalAlpha = 0.4;
  for (const muscle of comb)
    strokes(own, muscle, scale, [
      [1.6, look.light],
      [0.4, look.edge],
    ]);
  own.globalAlpha = 1;
  strokes(own, appendage, scale, [[0.5, look.edge]]);
  const [[ax, ay], [bx, by]] = [entryAt(appendage, 0), lastOf(appendage)];
  const out = (NECK * scale) / Math.hypot(bx - ax, by - ay);
  const room: Bounds = [ax - 20 * scale, by - 9 * scale, ax + 20 * scale, ay + 9 * scale];
  eraseAlong(own, [ax + out * (ay - by), ay - out * (ax - bx)], [ax, ay], room);
  laidOver(ink, own, bounds, 2.4 * scale);
}

/** mm of a 5-year-old over which it comes out of the atrium */
const NECK = 2.4;
