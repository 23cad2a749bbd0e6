/** The blood time that a picture shows while a moment of the cycle is held. */
import type { Circulation } from "../sim/circulation/answer/answer.ts";

/**
 * s: in the cycle that runs at `time` (s), `moment` s after its beginning; `time` itself where nothing is held or known.
 */
export function heldTime(time: number, moment: number | undefined, circulation: Circulation | null): number {
  const period = circulation?.traces.period ?? 0;
  if (moment === undefined || period <= 0) return time;
  return Math.floor(time / period) * period + Math.min(moment, period);
}
