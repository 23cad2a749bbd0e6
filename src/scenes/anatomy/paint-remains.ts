import { line } from "../../sim/geometry/centreline.ts";
import type { Point } from "../../sim/geometry/geometry.ts";
import type { Theme } from "../theme/theme.ts";
import type { HeartShape } from "./heart-shape.ts";
import { stitches } from "./paint-graft.ts";
import { bandOf, laidOver, paintTube, scratch } from "./paint-tube.ts";
import { boundsOf, type Ink, strokes, trace } from "./painted-sheet.ts";
import { emptied, threadOf } from "./tones.ts";

/** Beside the aorta: its end is closed edge to edge, in a ridge with a running suture over it. */
export function paintTrunk(ink: Ink, { at, trunk, size }: HeartShape, theme: Theme): void {
  const bounds = boundsOf([trunk.line], 14 * size);
  const own = scratch(ink, bounds);
  const tones = emptied(theme);
  paintTube(own, trunk, tones, 0.6 * size);
  const outline = bandOf(line(trunk.line), trunk, { part: 0.96 });
  const top = outline.length >> 1;
  const seam = outline.slice(top - SEAM, top + SEAM);
  strokes(own, seam, size, [
    [3.2, tones.wall],
    [2.5, tones.light],
    [0.5, tones.wall],
  ]);
  stitches(own, seam, 0.9 * size, threadOf(theme));
  ink.save();
  // It throws no shadow into the ventricle.
  const base: readonly Point[] = [
    [0.4, -30],
    [0.4, 30],
    [-60, 30],
    [-60, -30],
  ];
  trace(
    ink,
    base.map((point) => at(...point)),
    true,
  );
  ink.clip();
  laidOver(ink, own, bounds, 1.6 * size);
  ink.restore();
}

/** Points of its outline on either side of the top along which it is sewn. */
const SEAM = 12;
