/** A pulse of dye and how fast it leaves. */
import type { TracerCloud } from "./tracer-cloud.ts";

/** How much of a dye pulse is still inside, over time; grows as it is recorded. */
export interface WashOut {
  /** s since the pulse began */
  readonly time: number[];
  /** fraction of all dyed tracers that is still inside */
  readonly left: number[];
}

/** s of blood time between two points of the curve */
const SPACING = 0.05;

/** Dyes what enters through the great veins during the next `seconds` (s) of blood time; earlier dye is erased. */
export function beginDye(cloud: TracerCloud, seconds: number): WashOut {
  cloud.dyed.fill(0);
  cloud.dyeLeft = seconds;
  cloud.dyedEver = 0;
  cloud.dyedInside = 0;
  return { time: [0], left: [1] };
}

/**
 * Adds a point when its time has come. While dye still enters, nothing has been lost.
 * @param elapsed s of blood time since the pulse began
 */
export function recordWashOut(curve: WashOut, cloud: TracerCloud, elapsed: number): void {
  if (elapsed - curve.time[curve.time.length - 1]! < SPACING) return;
  curve.time.push(elapsed);
  curve.left.push(cloud.dyedEver > 0 ? cloud.dyedInside / cloud.dyedEver : 1);
}

/** s from the start of the pulse until the fraction `part` of it has left; undefined until then. */
export function washOutSeconds(curve: WashOut, part = 0.9): number | undefined {
  const at = curve.left.findIndex((left) => left <= 1 - part);
  return at < 0 ? undefined : curve.time[at];
}
