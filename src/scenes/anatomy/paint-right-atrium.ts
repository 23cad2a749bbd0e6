/** The right atrium from outside, closed, between a conduit and the heart. */
import { entryAt, lastOf } from "../../sim/checked/present.ts";
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
  const { outline, border, seams } = rightAtrium;
  const look = tissue("atrium", theme);
  const bounds = boundsOf([outline], 6 * scale);
  const own = scratch(ink, bounds);
  const lit = { ...look, body: mix(look.body, look.light, 0.5) };
  paintOrgan(own, outline, lit, { depth: 4.5 * scale, walled: border });
  strokes(own, border, scale, [[0.5, look.edge]]);
  for (const seam of seams) {
    // Both edges are turned in and stand up as a ridge.
    strokes(own, seam, scale, [
      [2, look.shade],
      [1.5, look.light],
    ]);
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
  const { appendage } = rightAtrium;
  const look = tissue("atrium", theme);
  const own = scratch(ink, bounds);
  paintOrgan(own, appendage, look, { depth: 3 * scale, walled: appendage });
  const [[ax, ay], [bx, by]] = [entryAt(appendage, 0), lastOf(appendage)];
  strokes(own, appendage, scale, [[0.5, look.edge]]);
  const out = (NECK * scale) / Math.hypot(bx - ax, by - ay);
  const room: Bounds = [ax - 20 * scale, by - 9 * scale, ax + 20 * scale, ay + 9 * scale];
  eraseAlong(own, [ax + out * (ay - by), ay - out * (ax - bx)], [ax, ay], room);
  laidOver(ink, own, bounds, 2.4 * scale);
}

/** mm of a 5-year-old over which it comes out of the atrium */
const NECK = 2.4;
