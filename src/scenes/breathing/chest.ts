/** What the chest does, read from the traces: when it fills, and what it is doing at a moment. */

import { entryAt, lastOf } from "../../sim/checked/present.ts";
import type { Traces } from "../../sim/circulation/answer/answer.ts";
import type { Stretch } from "../drawing/strips.ts";
import { valueAt } from "../drawing/trace-clock.ts";
import { stretchTrace } from "./lung-stretch.ts";

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
