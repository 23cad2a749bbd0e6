/** Blood in the leg vein as a row of dots, each with its share of the volume: it enters below, leaves above, and squeezed or not lies as dense everywhere. */

import { entryAt, lastOf } from "../../sim/checked/present.ts";
import type { Traces } from "../../sim/circulation/answer.ts";
import { GOLDEN } from "../drawing/curve-drawing.ts";
import { passage } from "../drawing/trace-clock.ts";
import { halfWidth, LENGTH } from "./vein.ts";

/** Dots in the column at the clock's zero. */
const COUNT = 110;
/** mL in the column then, for each m2 of body: a child's and an adult's leg look alike. */
const HELD = 91;
/** Plane units between two places at which the vein's width is taken. */
const STEP = LENGTH / 120;
/** Part of the column that a squeeze may press out or let in at most. */
const SWING = 0.7;

export interface BloodColumn {
  /** Most dots that are there at a time. */
  readonly count: number;
  /** Calls for each dot that is there: its number, which it keeps, where along the vein it is (plane units), and -1..1 across it. */
  each(time: number, squeeze: number, place: (dot: number, at: number, across: number) => void): void;
}

export function bloodColumn(traces: Traces, bodySize: number): BloodColumn {
  const legs = legTraces(traces);
  const outflow = legs && passage(traces, legs.out);
  const inflow = legs && passage(traces, legs.in);
  const held = HELD * bodySize;
  const each = held / COUNT;
  // Over many repeats the column neither swells nor runs dry.
  const even = inflow && outflow && outflow.perPeriod > 0 ? inflow.perPeriod / outflow.perPeriod : 1;
  return {
    count: Math.ceil(COUNT * (1 + SWING)),
    each(time, squeeze, place) {
      const low = -(inflow?.passed(time) ?? 0);
      const left = even * (outflow?.passed(time) ?? 0);
      const volume = held - left - low;
      const high = low + Math.min((1 + SWING) * held, Math.max((1 - SWING) * held, volume));
      const placeOf = places(squeeze);
      for (let dot = Math.ceil(low / each); dot * each < high; dot++)
        place(dot, placeOf((dot * each - low) / (high - low)), 2 * part((dot + 1) * GOLDEN) - 1);
    },
  };
}

const part = (value: number): number => value - Math.floor(value);

/** From the part of the volume that lies below to the place along the vein, plane units. */
function places(squeeze: number): (below: number) => number {
  const sums = [0];
  for (let at = LENGTH; at > STEP / 2; at -= STEP)
    sums.push(lastOf(sums) + halfWidth(at - STEP / 2, squeeze));
  const whole = lastOf(sums);
  return (below) => {
    const sought = below * whole;
    let [low, high] = [0, sums.length - 1];
    while (high - low > 1) {
      const middle = (low + high) >> 1;
      if (entryAt(sums, middle) <= sought) low = middle;
      else high = middle;
    }
    const from = entryAt(sums, low);
    return LENGTH - STEP * (low + (sought - from) / (entryAt(sums, high) - from));
  };
}

export interface LegTraces {
  /** L/min through the last valve, and from the capillaries into the veins */
  readonly out: Float64Array;
  readonly in: Float64Array;
}

/** Null while the traces lack the legs. */
export function legTraces({ flows }: Traces): LegTraces | null {
  const { legs, legBed } = flows;
  return legs && legBed ? { out: legs, in: legBed } : null;
}
