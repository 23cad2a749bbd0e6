/** A pulse of dye and how fast it leaves. */
import type { TracerCloud } from "./tracer-cloud.ts";

/** What a dye pulse left inside, over time; grows as it is recorded. */
export interface WashOut {
  /** s since the pulse began */
  readonly time: number[];
  /** part of all that was dyed that is still inside, 0..1 */
  readonly left: number[];
}

/** s of blood time between two points of the curve */
const SPACING = 0.05;

/** Dyes what enters through the great veins during the next `seconds` of blood time; older dye loses its mark. */
export function beginDye(cloud: TracerCloud, seconds: number): WashOut {
  cloud.dyed.fill(0);
  cloud.dyeLeft = seconds;
  cloud.dyedEver = 0;
  cloud.dyedInside = 0;
  return { time: [0], left: [1] };
}

/** Adds a point when its time has come. `elapsed`: s of blood time since the pulse began. While dye still enters, nothing has been lost. */
export function recordWashOut(curve: WashOut, cloud: TracerCloud, elapsed: number): void {
  if (elapsed - curve.time[curve.time.length - 1]! < SPACING) return;
  curve.time.push(elapsed);
  curve.left.push(cloud.dyedEver > 0 ? cloud.dyedInside / cloud.dyedEver : 1);
}

/** s from the pulse's begin until `part` (0..1) of it has left; undefined while it has not. */
export function washOutSeconds(curve: WashOut, part = 0.9): number | undefined {
  const at = curve.left.findIndex((left) => left <= 1 - part);
  return at < 0 ? undefined : curve.time[at];
}
