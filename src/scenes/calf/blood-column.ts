/**
 * Blood in the leg vein as a row of dots, each with its share of the volume: it enters below, leaves above. What lies below the lower valve
 * waits there while that is shut, and so does what lies above the upper one; between them it is as dense everywhere.
 */

import { entryAt, lastOf } from "../../sim/checked/present.ts";
import type { Traces } from "../../sim/circulation/answer/answer.ts";
import { GOLDEN, part } from "../drawing/even-spread.ts";
import { passage } from "../drawing/trace-clock.ts";
import { halfWidth, LENGTH, pressedAt, VALVES } from "./vein.ts";

/** Dots in the column at the clock's zero. */
const COUNT = 64;
/** mL in the column then, for each m2 of body: a child's and an adult's leg look alike. */
const HELD = 91;
/** Plane units between two places at which the vein's width is taken. */
const STEP = LENGTH / 120;
/** Least part of its blood at rest that a squeeze leaves in the calf, and the most. */
const [EMPTIED, FILLED] = [0.2, 2.2];
/** s over which a dot's speed is taken. */
const BRIEF = 0.01;

export interface BloodColumn {
  /** Most dots that are there at a time. */
  readonly count: number;
  /** Calls for each dot that is there: its number, which it keeps, where along the vein it is (plane units), -1..1 across it, and how fast it goes up (plane units a second). */
  each(time: number, place: (dot: number, at: number, across: number, speed: number) => void): void;
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
  const [foot, thigh] = [BELOW * held, ABOVE * held];
  const calf = held - foot - thigh;
  const standing = (time: number) => {
    const low = -(inflow?.passed(time) ?? 0);
    const left = even * (outflow?.passed(time) ?? 0);
    const within = Math.min(FILLED * calf, Math.max(EMPTIED * calf, calf - left - low));
    const squeezed = places(pressedAt(traces, time), LOWER, UPPER);
    const placeOf = (dot: number) => {
      const before = dot * each - low;
      if (before < foot) return FOOT(before / foot);
      return before < foot + within
        ? squeezed((before - foot) / within)
        : THIGH((before - foot - within) / thigh);
    };
    return { low, high: low + foot + within + thigh, placeOf };
  };
  return {
    count: Math.ceil(COUNT * (BELOW + ABOVE + FILLED * (1 - BELOW - ABOVE))) + 1,
    each(time, place) {
      const { low, high, placeOf } = standing(time);
      const earlier = standing(time - BRIEF);
      for (let dot = Math.ceil(low / each); dot * each < high; dot++) {
        const at = placeOf(dot);
        place(dot, at, 2 * part((dot + 1) * GOLDEN) - 1, (earlier.placeOf(dot) - at) / BRIEF);
      }
    },
  };
}

/** Between two places along the vein, the lower one first: room up to each step, plane units squared of half the vein. */
function roomSums(pressed: number, from: number, to: number): readonly number[] {
  const sums = [0];
  const steps = Math.round((from - to) / STEP);
  const step = (from - to) / steps;
  for (let i = 0; i < steps; i++)
    sums.push(lastOf(sums) + step * halfWidth(from - (i + 0.5) * step, pressed));
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

/** Where cusps end, the places below the lower and above the upper ones, and their parts of the vein's room at rest: no muscle squeezes them. */
const [UPPER, LOWER] = [VALVES[0].at, VALVES[1].at];
const [FOOT, THIGH] = [places(0, LENGTH, LOWER), places(0, UPPER, 0)];
const [BELOW, ABOVE] = (() => {
  const rooms = [LENGTH, LOWER, UPPER].map((from, i) =>
    lastOf(roomSums(0, from, entryAt([LOWER, UPPER, 0], i))),
  );
  const all = rooms.reduce((a, b) => a + b);
  return [entryAt(rooms, 0) / all, entryAt(rooms, 2) / all];
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
