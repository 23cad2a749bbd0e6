/** When the calf squeezes, read from its trace. */
import { entryAt } from "../../sim/checked/present.ts";
import type { Traces } from "../../sim/circulation/answer.ts";
import { smoothStep } from "../../sim/geometry/centreline.ts";
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

/** Share of its greatest pressure from which on the muscle presses its hardest. */
const HARDEST = 0.985;

/** Word key of what a leg is doing, for the words over it. */
export function calfSaying(traces: Traces, seconds: number): string {
  const share = squeezeAt(traces, seconds);
  if (share > HARDEST) return "further.calf.hardest";
  const doing = calfDoing(traces, seconds);
  return doing === "rest" && hardestOf(traces) > 0 ? "further.calf.filling" : `further.doing.${doing}`;
}

/** Part of its greatest pressure at which the muscle's two states meet (at 60 mmHg the vein is then about half as narrow), and s in which one takes the other's place. */
const HALFWAY = 0.3;
const CHANGES = 0.2;

/** s of blood time: the last moment at which the calf was in the other state, pressed hardest while it rests, let go while it presses. Null when it rests all the time. */
export function oppositeOf(traces: Traces, seconds: number): number | null {
  const { calf } = traces.pressures;
  if (!calf) return null;
  const { time, period } = traces;
  const most = hardestOf(traces);
  const presses = (i: number) => entryAt(calf, i) > HALFWAY * most;
  const turns = Array.from(time.keys()).filter((i) => i > 0 && presses(i) !== presses(i - 1));
  if (turns.length < 2) return null;
  // Turns are counted on beyond both ends of the repeat.
  const repeats = (k: number) => Math.floor(k / turns.length);
  const turn = (k: number) => entryAt(turns, k - repeats(k) * turns.length);
  const at = (k: number) => entryAt(time, turn(k)) + repeats(k) * period;
  /** Between a turn and the one before it: the extreme of the state that ends there. */
  const extreme = (k: number): number => {
    const [from, to] = [turn(k - 1), turn(k)];
    const last = time.length - 1;
    const span = from < to ? to - from : to - from + last;
    const sign = presses(to) ? -1 : 1;
    let best = 0;
    const value = (j: number) => sign * entryAt(calf, (from + j) % last);
    for (let j = 1; j < span; j++) if (value(j) > value(best)) best = j;
    return at(k) - ((span - best) / last) * period;
  };
  let k = turns.length * Math.ceil(seconds / period);
  while (at(k) > seconds) k--;
  const [before, now] = [extreme(k - 1), extreme(k)];
  return before + (now - before) * smoothStep(0, CHANGES, seconds - at(k));
}
