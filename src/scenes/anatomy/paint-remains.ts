import { line } from "../../sim/geometry/centreline.ts";
import type { Point } from "../../sim/geometry/geometry.ts";
import type { Theme } from "../theme/theme.ts";
import type { Tube } from "./great-vessels.ts";
import type { HeartShape } from "./heart-shape.ts";
import { stitches } from "./paint-graft.ts";
import { bandOf, laidOver, paintTube, scratch } from "./paint-tube.ts";
import { boundsOf, type Ink, strokes, trace } from "./painted-sheet.ts";
import { emptied, threadOf } from "./tones.ts";

/** A vessel's end that is closed edge to edge, in a ridge with a running suture over it. @param size mm of the body for one of a 5-year-old */
export function paintClosedEnd(ink: Ink, tube: Tube, size: number, theme: Theme): void {
  const tones = emptied(theme);
  paintTube(ink, tube, tones, 0.6 * size);
  const outline = bandOf(line(tube.line), tube, { part: 0.96 });
  const top = outline.length >> 1;
  const seam = outline.slice(top - SEAM, top + SEAM);
  strokes(ink, seam, size, [
    [3.2, tones.wall],
    [2.5, tones.light],
    [0.5, tones.wall],
  ]);
  stitches(ink, seam, 0.9 * size, threadOf(theme));
}

/** Beside the aorta. */
export function paintTrunk(ink: Ink, { at, trunk, size }: HeartShape, theme: Theme): void {
  const bounds = boundsOf([trunk.line], 14 * size);
  const own = scratch(ink, bounds);
  paintClosedEnd(own, trunk, size, theme);
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
