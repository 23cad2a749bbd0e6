/** When the calf squeezes, read from its trace. */
import type { Traces } from "../../sim/circulation/answer.ts";
import type { Stretch } from "../drawing/strips.ts";
import { valueAt } from "../drawing/trace-clock.ts";
import { squeezeAt } from "./vein.ts";

/** Stretches in which the muscle presses with more than half its greatest pressure. */
export function squeezes(traces: Traces): readonly Stretch[] {
  const found: Stretch[] = [];
  let from: number | null = null;
  for (const seconds of traces.time) {
    const presses = squeezeAt(traces, Math.min(seconds, traces.period * (1 - 1e-9))) > 0.5;
    if (presses && from === null) from = seconds;
    if (!presses && from !== null) {
      found.push({ from, to: seconds });
      from = null;
    }
  }
  if (from !== null) found.push({ from, to: traces.period });
  return found;
}

/** Share of the greatest pressure under which the muscle rests. */
const AT_REST = 0.05;

/** Word key: squeezing while the pressure rises, letting go while it falls, resting while there is next to none. */
export function calfDoing(traces: Traces, seconds: number): "squeeze" | "release" | "rest" {
  const { calf } = traces.pressures;
  if (!calf || squeezeAt(traces, seconds) < AT_REST) return "rest";
  const step = traces.period / 500;
  return valueAt(traces, calf, seconds + step) > valueAt(traces, calf, seconds - step)
    ? "squeeze"
    : "release";
}
