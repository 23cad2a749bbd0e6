/** Traces read on the running clock: a value at a moment, and how much blood has passed. */
import { lastOf, present } from "../../sim/checked/present.ts";

/** The part of a trace that a reading needs; time in s from 0 to the period, ends included. */
export interface Clocked {
  readonly time: Float64Array;
  readonly period: number;
}

/** Seconds into the cycle, in [0, period). */
export function phaseOf(clock: Clocked, seconds: number): number {
  const phase = seconds % clock.period;
  return phase < 0 ? phase + clock.period : phase;
}

function spanOf(clock: Clocked, phase: number): number {
  let low = 0;
  let high = clock.time.length - 1;
  while (high - low > 1) {
    const middle = (low + high) >> 1;
    if (clock.time[middle]! <= phase) low = middle;
    else high = middle;
  }
  return low;
}

/** The trace's value at `seconds` of the running clock, linear between samples. */
export function valueAt(clock: Clocked, values: Float64Array, seconds: number): number {
  if (values.length === 1) return values[0]!;
  const phase = phaseOf(clock, seconds);
  const i = spanOf(clock, phase);
  const w = (phase - clock.time[i]!) / (clock.time[i + 1]! - clock.time[i]! || 1);
  return values[i]! + (values[i + 1]! - values[i]!) * w;
}

/** The same as a whole number, so that a number which keeps to the moment that the picture shows can be read. */
export const readingAt = (clock: Clocked, values: Float64Array, seconds: number): number =>
  Math.round(valueAt(clock, values, seconds)) + 0;

export const meanOf = (clock: Clocked, flow: Float64Array): number =>
  (passage(clock, flow).perPeriod * 60) / 1000 / clock.period;

export interface Passage {
  /** mL that pass in one repeat */
  readonly perPeriod: number;
  /** mL passed from the clock's zero to `seconds`; negative when blood has run backward */
  passed(seconds: number): number;
}

/** Sums a flow trace (L/min) by trapezoids, so that dots move by exactly the blood that the model moved. */
export function passage(clock: Clocked, flow: Float64Array): Passage {
  const total = new Float64Array(flow.length);
  for (let i = 1; i < flow.length; i++) {
    const step = clock.time[i]! - clock.time[i - 1]!;
    total[i] = total[i - 1]! + ((flow[i]! + flow[i - 1]!) / 2) * step * (1000 / 60);
  }
  const perPeriod = lastOf(total);
  return {
    perPeriod,
    passed(seconds) {
      const phase = phaseOf(clock, seconds);
      const repeats = Math.round((seconds - phase) / clock.period);
      return repeats * perPeriod + valueAt(clock, total, phase);
    },
  };
}

/** A flow trace by name; "a+b*0.5" adds half of one of the model's streams to another. Undefined when the model gives none of that name. */
export function flowTrace(
  flows: Readonly<Record<string, Float64Array>>,
  name: string,
): Float64Array | undefined {
  if (flows[name]) return flows[name];
  const parts = name.split("+").map((each) => {
    const [key = "", part = "1"] = each.split("*");
    return { flow: flows[key], part: Number(part) };
  });
  if (parts.some(({ flow }) => !flow)) return undefined;
  return parts[0]?.flow?.map((_, i) =>
    parts.reduce((sum, { flow, part }) => sum + part * present(flow)[i]!, 0),
  );
}
