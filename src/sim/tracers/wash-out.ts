/** A pulse of dye and how fast it leaves; more pulses after it, unseen, tell how far that depends on the moment of breath and beat. */
import { PULSES, type TracerCloud } from "./tracer-cloud.ts";

/** How much of a dye pulse is still inside, over time; grows as it is recorded. */
export interface WashOut {
  /** s since the pulse began */
  readonly time: number[];
  /** fraction of all dyed tracers that is still inside */
  readonly left: number[];
  /** s from the start of each pulse until nine tenths of it had left; undefined until then. The dyed one is the first. */
  readonly seconds: (number | undefined)[];
}

/** s: the mean of all pulses, and the shortest and the longest. */
export interface WashOutSpread {
  readonly mean: number;
  readonly band: readonly [least: number, most: number];
}

/** s of blood time between two points of the curve */
const SPACING = 0.05;
/** Fraction of a pulse that may still be inside when it counts as gone. */
const REST = 0.1;

/** Dyes what enters through the great veins during the next `seconds` (s) of blood time and follows as many pulses after it; earlier dye is erased. */
export function beginDye(cloud: TracerCloud, seconds: number): WashOut {
  cloud.dyed.fill(0);
  cloud.pulse.fill(0);
  cloud.sincePulse = 0;
  cloud.pulseSeconds = seconds;
  cloud.entered.fill(0);
  cloud.inside.fill(0);
  return { time: [0], left: [1], seconds: new Array(PULSES).fill(undefined) };
}

/**
 * Adds a point when its time has come. While dye still enters, nothing has been lost.
 * @param elapsed s of blood time since the pulse began
 */
export function recordWashOut(curve: WashOut, cloud: TracerCloud, elapsed: number): void {
  if (elapsed - curve.time[curve.time.length - 1]! < SPACING) return;
  const left = (pulse: number) =>
    cloud.entered[pulse]! > 0 ? cloud.inside[pulse]! / cloud.entered[pulse]! : 1;
  curve.time.push(elapsed);
  curve.left.push(left(1));
  for (let n = 0; n < PULSES; n++)
    if (elapsed >= (n + 1) * cloud.pulseSeconds && left(n + 1) <= REST)
      curve.seconds[n] ??= elapsed - n * cloud.pulseSeconds;
}

/** Undefined until nine tenths of every pulse have left: one alone says when it entered as much as how the blood turns. */
export function washOutSpread({ seconds }: WashOut): WashOutSpread | undefined {
  const known = seconds.filter((each) => each !== undefined);
  if (known.length < seconds.length) return undefined;
  const mean = known.reduce((sum, each) => sum + each / known.length, 0);
  return { mean, band: [Math.min(...known), Math.max(...known)] };
}
