/** What has left the plane of late by each opening, by origin: of what the blood beyond it is mixed. */
import { entryAt } from "../sim/checked/present.ts";
import type { Opening } from "../sim/geometry/geometry.ts";
import { ORIGINS } from "../sim/tracers/tracers.ts";

/** Parts (sum 1) by origin, in the order of ORIGINS, of what leaves by each opening by name. */
export type Departing = Readonly<Record<string, readonly number[]>>;

export interface Departures {
  /** by origin for each opening in turn, counted less the longer ago it left */
  readonly counts: Float64Array;
  /** s of blood time since the plane was filled */
  passed: number;
}

/** s over which what has left is forgotten: more than a heartbeat, less than a breath */
const MEMORY = 2;
/** s after which blood has gone through the plane: what it was filled with at first came from nowhere */
const THROUGH = 1.5;
/** tracers that tell a mixture */
const ENOUGH = 12;

export const noDepartures = (openings: number): Departures => ({
  counts: new Float64Array(openings * ORIGINS.length),
  passed: 0,
});

/** @param seconds s of blood time that pass */
export function forget(departures: Departures, seconds: number): void {
  const kept = Math.exp(-seconds / MEMORY);
  departures.counts.forEach((count, k, counts) => {
    counts[k] = kept * count;
  });
  departures.passed += seconds;
}

export function countDeparture({ counts }: Departures, opening: number, origin: number): void {
  const k = opening * ORIGINS.length + origin;
  counts[k] = entryAt(counts, k) + 1;
}

/** Of each opening by which enough has left; null before blood has gone through the plane. */
export function departingNow({ counts, passed }: Departures, openings: readonly Opening[]): Departing | null {
  if (passed < THROUGH) return null;
  const mixed = openings.flatMap(({ name }, n): (readonly [string, readonly number[]])[] => {
    const own = [...counts.subarray(n * ORIGINS.length, (n + 1) * ORIGINS.length)];
    const all = own.reduce((sum, count) => sum + count, 0);
    return all < ENOUGH ? [] : [[name, own.map((count) => count / all)]];
  });
  return Object.fromEntries(mixed);
}
