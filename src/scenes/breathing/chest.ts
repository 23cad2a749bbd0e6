/** What the breath does to the picture, read from the traces: how far the lungs are stretched, and when the chest fills. */

import { entryAt, lastOf } from "../../sim/checked/present.ts";
import type { Traces } from "../../sim/circulation/answer.ts";
import type { Stretch } from "../drawing/strips.ts";
import { valueAt } from "../drawing/trace-clock.ts";

/** mmHg across the lungs (alveolar minus pleural) at which they are drawn at their resting size: the mean of a quiet breath. */
const REST = 4.7;
/** Linear widening for each mmHg: half a litre on two and a half is 6 % in each direction over the 2 mmHg of a quiet breath (textbook volumes). */
const WIDENING = 0.032;

/** mmHg across the lungs, as a trace. */
export function stretchTrace(traces: Traces): Float64Array | null {
  const { pleural, alveolar } = traces.pressures;
  return pleural ? pleural.map((value, i) => (alveolar?.[i] ?? 0) - value) : null;
}

/** Linear size of the lungs against rest. */
export const lungSize = (stretch: number): number =>
  Math.min(1.4, Math.max(0.8, 1 + WIDENING * (stretch - REST)));

/** When the lungs fill: stretches of time in which they widen; none when the breath is held. */
export function fillings(traces: Traces): readonly Stretch[] {
  const stretch = stretchTrace(traces);
  if (!stretch) return [];
  const swing = Math.max(...stretch) - Math.min(...stretch);
  if (swing < 0.2) return [];
  const found: Stretch[] = [];
  let from: number | null = null;
  for (let i = 1; i < stretch.length; i++) {
    const rises = entryAt(stretch, i) - entryAt(stretch, i - 1) > swing * 1e-5;
    if (rises && from === null) from = entryAt(traces.time, i - 1);
    if (!rises && from !== null) {
      found.push({ from, to: entryAt(traces.time, i - 1) });
      from = null;
    }
  }
  if (from !== null) found.push({ from, to: lastOf(traces.time) });
  return found;
}

export type Doing = "in" | "out" | "pause" | "held" | "valsalva" | "ventilatorIn" | "ventilatorOut";

/** Parts of the breath: so little of it left, and so little change over a hundredth of its time, that the chest rests before the next. */
const EMPTY = 0.02;
const RESTS = 0.004;

/** What the chest is doing at a moment, as a key of the words. */
export function doingAt(traces: Traces, breathing: string, seconds: number): Doing {
  if (breathing === "held" || breathing === "valsalva") return breathing;
  const stretch = stretchTrace(traces);
  if (!stretch) return "held";
  const step = traces.period / 200;
  const change = valueAt(traces, stretch, seconds + step) - valueAt(traces, stretch, seconds - step);
  const [least, most] = [Math.min(...stretch), Math.max(...stretch)];
  const empty = valueAt(traces, stretch, seconds) < least + EMPTY * (most - least);
  if (empty && Math.abs(change) < RESTS * (most - least)) return "pause";
  const fills = change > 0;
  if (breathing === "ventilator") return fills ? "ventilatorIn" : "ventilatorOut";
  return fills ? "in" : "out";
}
