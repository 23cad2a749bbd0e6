/** A length to scale: a line with a mark across each end. */
import type { Graphics } from "pixi.js";

interface Bar {
  /** where its middle lies, and its length, in the ink's own units */
  readonly x: number;
  readonly y: number;
  readonly long: number;
  /** half the height of the marks at its ends, and the width of all its lines */
  readonly end: number;
  readonly width: number;
}

export function drawScaleBar(ink: Graphics, { x, y, long, end, width }: Bar, color: string): void {
  const ends = [x - long / 2, x + long / 2] as const;
  ink.moveTo(ends[0], y).lineTo(ends[1], y);
  for (const at of ends) ink.moveTo(at, y - end).lineTo(at, y + end);
  ink.stroke({ color, width });
}
