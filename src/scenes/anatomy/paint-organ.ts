/** An organ with a soft round: lit from above, darker towards its edge. */
import type { Point } from "../../sim/geometry/geometry.ts";
import { boundsOf, type Ink, trace } from "./painted-sheet.ts";
import type { Tissue } from "./tones.ts";

/** Strokes of which the dark towards an edge is made. */
const STEPS = 12;

interface Relief {
  /** mm over which the edge darkens */
  readonly depth: number;
  /** 0..1 of the whole */
  readonly alpha?: number;
  /** mm of the edge's line; none when left out */
  readonly edge?: number;
  /** the stretch of the outline that is an edge; all of it when left out */
  readonly walled?: readonly Point[];
}

export function paintOrgan(
  ink: Ink,
  outline: readonly Point[],
  { shade, body, light, edge }: Tissue,
  { depth, alpha = 1, edge: line = 0, walled }: Relief,
): void {
  const [left, bottom, right, top] = boundsOf([outline], 0);
  const reach = Math.max(right - left, top - bottom);
  ink.save();
  ink.globalAlpha = alpha;
  trace(ink, outline, true);
  const pool = ink.createRadialGradient(
    left + 0.36 * (right - left),
    bottom + 0.68 * (top - bottom),
    0,
    left + 0.45 * (right - left),
    bottom + 0.55 * (top - bottom),
    0.75 * reach,
  );
  pool.addColorStop(0, light);
  pool.addColorStop(0.42, body);
  pool.addColorStop(1, shade);
  ink.fillStyle = pool;
  ink.fill();
  ink.clip();
  if (walled) trace(ink, walled);
  ink.strokeStyle = shade;
  ink.globalAlpha = 0.09 * alpha;
  for (let k = 1; k <= STEPS; k++) {
    ink.lineWidth = (2 * depth * k) / STEPS;
    ink.stroke();
  }
  ink.restore();
  if (line === 0) return;
  trace(ink, outline, true);
  ink.lineWidth = line;
  ink.strokeStyle = edge;
  ink.stroke();
}
