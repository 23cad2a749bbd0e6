/** Seams of a continuous suture: stitches that lie along the edge that they hold. */
import type { Point } from "../../../sim/geometry/geometry.ts";
import type { Theme } from "../../theme/theme.ts";
import { type Ink, strokes, trace } from "../painted-sheet.ts";
import { threadOf, tissue } from "../tones.ts";

/** mm of a 5-year-old: a stitch and the gap to the next, and how wide the thread is drawn. */
const STITCH = [1.5, 1.1];
const THREAD = 0.6;

/** @param through part of it that is seen, 1 on the near side */
export function runningSuture(
  ink: Ink,
  seam: readonly Point[],
  size: number,
  theme: Theme,
  through = 1,
): void {
  ink.save();
  ink.lineCap = "round";
  ink.globalAlpha = 0.5 * through;
  strokes(ink, seam, size, [[1.3, tissue("atrium", theme).edge]]);
  ink.globalAlpha = through;
  trace(ink, seam);
  ink.setLineDash(STITCH.map((part) => part * size));
  ink.lineWidth = THREAD * size;
  ink.strokeStyle = threadOf(theme);
  ink.stroke();
  ink.restore();
}

/** Around a vessel that is cut open: along both cut edges, and fainter in an arc across its back wall. */
export function aroundMouth(ink: Ink, [from, to]: readonly [Point, Point], size: number, theme: Theme): void {
  const [dx, dy] = [to[0] - from[0], to[1] - from[1]];
  const across = Math.hypot(dx, dy);
  const at = (part: number, beyond: number): Point => [
    from[0] + part * dx - (beyond * dy) / across,
    from[1] + part * dy + (beyond * dx) / across,
  ];
  const arc = Array.from({ length: 25 }, (_, i): Point => {
    const part = i / 24;
    return at(part, 0.5 * across * part * (1 - part));
  });
  runningSuture(ink, arc, size, theme, 0.55);
  const reach = (2.2 * size) / across;
  for (const end of [0, 1]) {
    const out = end === 0 ? -reach : 1 + reach;
    runningSuture(ink, [at(end, 0), at(out, 0)], size, theme);
  }
}
