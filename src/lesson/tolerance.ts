/** How far a typed number may lie from a value and still be that value. */
import type { Tolerance } from "./lesson.ts";

/** In the value's unit; a hair wider than written, so that arithmetic takes nothing away at the edge. */
export const halfWidth = ({ value, percent }: Tolerance, of: number): number =>
  (percent ? value * Math.abs(of) : value) * (1 + 1e-9);
