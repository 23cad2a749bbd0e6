/** A calf that squeezes once a second, for the tests of its drawing. */
import type { Traces } from "../../src/sim/circulation/answer/answer.ts";

const time = Float64Array.from({ length: 401 }, (_, i) => (i / 400) * 2);
export const wave = (value: (phase: number) => number) =>
  Float64Array.from(time, (t) => value(2 * Math.PI * t));
/** One contraction a second; the veins lose while it squeezes and gain between, 0.6 L/min on average. */
export const traces: Traces = {
  time,
  period: 2,
  heartPeriod: 0.5,
  pressures: { calf: wave((p) => 60 * Math.sin(p / 2) ** 2) },
  flows: { legs: wave((p) => 0.6 - 0.5 * Math.cos(p)), legBed: wave((p) => 0.6 + 0.2 * Math.sin(p)) },
  volumes: {},
};
