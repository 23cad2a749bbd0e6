/** Seams of a continuous suture along an edge of tissue. */
import type { Point } from "../../../sim/geometry/geometry.ts";
import type { Theme } from "../../theme/theme.ts";
import { stitches } from "../paint-graft.ts";
import { type Ink, strokes } from "../painted-sheet.ts";
import { threadOf, tissue } from "../tones.ts";

/** Its stitches against those around a vessel. */
const FINE = 0.74;

/** @param through part of it that is seen, 1 on the near side */
export function runningSuture(
  ink: Ink,
  seam: readonly Point[],
  size: number,
  theme: Theme,
  through = 1,
): void {
  ink.save();
  ink.globalAlpha = 0.6 * through;
  strokes(ink, seam, size, [[0.7, tissue("atrium", theme).edge]]);
  ink.globalAlpha = through;
  ink.lineCap = "butt";
  stitches(ink, seam, FINE * size, threadOf(theme));
  ink.restore();
}
