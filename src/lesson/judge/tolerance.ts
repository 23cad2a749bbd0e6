/** How far a typed number may lie from a value and still be that value. */
import type { NumberQuestion, Tolerance } from "../lesson.ts";

/** Arithmetic takes nothing away at the edge. */
const HAIR = 1 + 1e-9;

/** In the value's unit. */
export const halfWidth = ({ value, percent }: Tolerance, of: number): number =>
  (percent ? value * Math.abs(of) : value) * HAIR;

/** As `halfWidth`; whoever rounds to the decimals that are shown is never refused. */
export const widthOfNumber = ({ within, format }: NumberQuestion, of: number): number =>
  Math.max(halfWidth(within, of), 0.5 * 10 ** -format.digits * HAIR);
