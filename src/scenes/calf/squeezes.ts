/** When the calf squeezes, read from its trace. */
import { entryAt } from "../../sim/checked/present.ts";
import type { Traces } from "../../sim/circulation/answer/answer.ts";
import type { Stretch } from "../drawing/strips.ts";
import { valueAt } from "../drawing/trace-clock.ts";
import { hardestOf, squeezeAt } from "./vein.ts";

/** Stretches in which something is so, by the index of the moment. */
function stretches(time: Float64Array, period: number, isSo: (i: number) => boolean): readonly Stretch[] {
  const found: Stretch[] = [];
  let from: number | null = null;
  time.forEach((seconds, i) => {
    const so = isSo(i);
    if (so && from === null) from = seconds;
    if (so || from === null) return;
    found.push({ from, to: seconds });
    from = null;
  });
  if (from !== null) found.push({ from, to: period });
  return found;
}

/** Stretches in which the muscle squeezes: its pressure rises, from rest to its greatest. */
export const squeezes = (traces: Traces): readonly Stretch[] =>
  stretches(
    traces.time,
    traces.period,
    (i) => calfDoing(traces, Math.min(entryAt(traces.time, i), traces.period * (1 - 1e-9))) === "squeeze",
  );

/** Part of its greatest flow from which on the heart ejects. */
const EJECTS = 0.05;

/** When the heart ejects: each time it drives a wave of blood through the leg's capillaries too. */
export function beats({ time, period, flows: { aorta } }: Traces): readonly Stretch[] {
  if (!aorta) return [];
  const least = EJECTS * aorta.reduce((a, b) => Math.max(a, b), 0);
  return stretches(time, period, (i) => entryAt(aorta, i) > least);
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

/** Word key of what a leg is doing, for the words over it. */
export function calfSaying(traces: Traces, seconds: number): string {
  const doing = calfDoing(traces, seconds);
  return doing === "rest" && hardestOf(traces) > 0 ? "further.calf.filling" : `further.calf.${doing}`;
}
