/** Blood in the leg vein as a row of dots, each with its share of the volume: it enters below, leaves above; what lies below the lower valve waits there while it is shut, the rest is as dense everywhere. */

import { entryAt, lastOf } from "../../sim/checked/present.ts";
import type { Traces } from "../../sim/circulation/answer/answer.ts";
import { GOLDEN, part } from "../drawing/even-spread.ts";
import { passage } from "../drawing/trace-clock.ts";
import { halfWidth, LENGTH, VALVES } from "./vein.ts";

/** Dots in the column at the clock's zero. */
const COUNT = 64;
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
  each(time: number, pressed: number, place: (dot: number, at: number, across: number) => void): void;
}

/** @param below L/min through the lower valve; null until it is known */
export function bloodColumn(traces: Traces, bodySize: number, below: Float64Array | null): BloodColumn {
  const legs = legTraces(traces);
  const outflow = legs && passage(traces, legs.out);
  const inflow = legs && passage(traces, below ?? legs.in);
  const held = HELD * bodySize;
  const each = held / COUNT;
  // Over many cycles the column neither swells nor runs dry.
  const even = inflow && outflow && outflow.perPeriod > 0 ? inflow.perPeriod / outflow.perPeriod : 1;
  return {
    count: Math.ceil(COUNT * (1 + SWING)),
    each(time, pressed, place) {
      const low = -(inflow?.passed(time) ?? 0);
      const left = even * (outflow?.passed(time) ?? 0);
      const volume = held - left - low;
      const high = low + Math.min((1 + SWING) * held, Math.max((1 - SWING) * held, volume));
      const above = places(pressed, LOWER, 0);
      for (let dot = Math.ceil(low / each); dot * each < high; dot++) {
        const before = dot * each - low;
        const at =
          before < BELOW * held
            ? FOOT(before / (BELOW * held))
            : above((before - BELOW * held) / (high - low - BELOW * held));
        place(dot, at, 2 * part((dot + 1) * GOLDEN) - 1);
      }
    },
  };
}

/** Between two places along the vein, the lower one first: room up to each step, halves of plane units squared over the step. */
function roomSums(pressed: number, from: number, to: number): readonly number[] {
  const sums = [0];
  const steps = Math.round((from - to) / STEP);
  for (let i = 0; i < steps; i++)
    sums.push(lastOf(sums) + halfWidth(from - ((i + 0.5) * (from - to)) / steps, pressed));
  return sums;
}

/** From the part of the volume that lies below to the place along the vein, plane units. */
function places(pressed: number, from: number, to: number): (below: number) => number {
  const sums = roomSums(pressed, from, to);
  const whole = lastOf(sums);
  return (below) => {
    const sought = below * whole;
    let [low, high] = [0, sums.length - 1];
    while (high - low > 1) {
      const middle = (low + high) >> 1;
      if (entryAt(sums, middle) <= sought) low = middle;
      else high = middle;
    }
    const least = entryAt(sums, low);
    const steps = low + (sought - least) / (entryAt(sums, high) - least);
    return from - ((from - to) * steps) / (sums.length - 1);
  };
}

/** Where the lower valve's cusps end, the places below it, and their part of the vein's room at rest: no muscle squeezes them. */
const LOWER = VALVES[1].at;
const FOOT = places(0, LENGTH, LOWER);
const BELOW = (() => {
  const [below, above] = [roomSums(0, LENGTH, LOWER), roomSums(0, LOWER, 0)];
  return lastOf(below) / (lastOf(below) + lastOf(above));
})();

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
