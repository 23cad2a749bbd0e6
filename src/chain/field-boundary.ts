/** From the circulation's traces to the conditions at the field's openings. */

import { entryAt } from "../sim/checked/present.ts";
import type { Circulation, Traces } from "../sim/circulation/answer/answer.ts";
import type { BoundaryConditions } from "../sim/flow-field/flow-field.ts";
import { fromLitresPerMinute, toMillilitre } from "../sim/units.ts";

/** Samples in one cycle of breath and beat: 20 or more for each beat of a resting breath. */
const SAMPLES = 128;

/** @param flow L/min */
export const toMillilitresPerSecond = (flow: number): number => toMillilitre(fromLitresPerMinute(flow));

/** A trace's value at `time` (s), repeating; `time` may exceed the period. */
export function traceAt(traces: Traces, values: ArrayLike<number>, time: number): number {
  const last = values.length - 1;
  if (last < 1) return values[0] ?? 0;
  const turns = time / traces.period;
  const place = (turns - Math.floor(turns)) * last;
  const index = Math.min(last - 1, Math.floor(place));
  const share = place - index;
  return entryAt(values, index) * (1 - share) + entryAt(values, index + 1) * share;
}

/** mL/s over one period at the field's sampling; a steady flow where the circulation kept no trace. */
function wave(circulation: Circulation, name: "ivc" | "svc" | "fenestration", lead: number): Float32Array {
  const { traces, flows } = circulation;
  const trace = traces.flows[name];
  return Float32Array.from({ length: SAMPLES }, (_, i) =>
    toMillilitresPerSecond(
      trace ? traceAt(traces, trace, lead + (i / SAMPLES) * traces.period) : flows[name],
    ),
  );
}

/** Venous flows this near to each other count as the same person's: a fair race, and only then one inflow for both. */
const NEAR = 0.1;

/** Whether two panes can be shown at one inflow: the same body at the same effort, with another pathway. */
export const sharesInflow = (one: Circulation, other: Circulation): boolean =>
  (["ivc", "svc"] as const).every(
    (vein) => Math.abs(one.flows[vein] - other.flows[vein]) <= NEAR * Math.abs(other.flows[vein]),
  );

/**
 * @param inflowOf whose venous flows enter; another pane's for a race at equal inflow
 * @param leaks    the geometry has an opening "fenestration"
 * @param lead     s by which the page's clock is ahead of the field's own time, so that both show the same beat
 */
export function boundaryConditions(
  circulation: Circulation,
  inflowOf: Circulation,
  leaks: boolean,
  lead = 0,
): BoundaryConditions {
  const left = Math.max(0, circulation.flows.left);
  const right = Math.max(0, circulation.flows.right);
  const both = left + right;
  return {
    period: inflowOf.traces.period,
    inflow: { ivc: wave(inflowOf, "ivc", lead), svc: wave(inflowOf, "svc", lead) },
    split: both > 0 ? { left: left / both, right: right / both } : { left: 0.5, right: 0.5 },
    outflow: leaks ? { fenestration: wave(circulation, "fenestration", lead) } : {},
  };
}
