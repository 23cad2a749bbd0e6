/** A simple arterial-pressure reflex: heart rate and systemic resistance against the pressure that the body defends. */
import { referenceSet } from "../body/growth.ts";
import { wordSetting } from "../parameters/parameters.ts";
import type { CirculationRequest } from "../parameters/request.ts";
import { fromMmHg } from "../units.ts";
import { exertion } from "./exercise.ts";

export interface Reflex {
  /** factors on the values without reflex, for a mean arterial pressure (Pa) */
  readonly heartRate: (arterialMean: number) => number;
  readonly resistance: (arterialMean: number) => number;
}

/** Parts of rate and of resistance for each part of pressure lost (teaching gains), and how far each may go. */
const RATE_GAIN = 1;
const RESISTANCE_GAIN = 0.5;
const MIN = 0.7;
const MAX = 1.4;

export function reflexOf(request: CirculationRequest): Reflex {
  if (wordSetting(request, "reflex") === "off") return { heartRate: () => 1, resistance: () => 1 };
  const set = referenceSet(request.stage, request.body.bsa);
  const defended = fromMmHg(set.arterialMean) * exertion(request).arterialMean;
  const answer = (gain: number) => (arterialMean: number) =>
    Math.min(MAX, Math.max(MIN, 1 + gain * (1 - arterialMean / defended)));
  return { heartRate: answer(RATE_GAIN), resistance: answer(RESISTANCE_GAIN) };
}
