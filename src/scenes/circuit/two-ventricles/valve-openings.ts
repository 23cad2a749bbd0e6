/** How far the valves of a heart with two ventricles stand open, by the computed flow. */
import type { Circulation } from "../../../sim/circulation/answer.ts";
import { fromMillilitre, toLitresPerMinute } from "../../../sim/units.ts";
import { OPEN, type Standing } from "../../anatomy/standing.ts";
import { valueAt } from "../../drawing/trace-clock.ts";
import type { Openings } from "./valve-drawing.ts";

/** 0 shut .. 1 open: the tricuspid valve while more comes into its ventricle than leaves it, the pulmonary one while blood passes it. */
export function rightValvesAt(
  { traces }: Circulation,
  time: number,
): readonly [filling: number, ejecting: number] {
  const { rightVentricle } = traces.volumes;
  const { pulmonary } = traces.flows;
  if (!rightVentricle || !pulmonary) return [1, 0];
  const most = pulmonary.reduce((a, b) => Math.max(a, b), 1e-9);
  const out = valueAt(traces, pulmonary, time);
  const step = traces.heartPeriod / 100;
  const gained = valueAt(traces, rightVentricle, time + step) - valueAt(traces, rightVentricle, time - step);
  const grows = toLitresPerMinute(fromMillilitre(gained / (2 * step)));
  const part = (flow: number) => Math.min(1, Math.max(0, flow / (OPEN * most)));
  const ejecting = part(out);
  // What opens the one shuts the other; the difference blurs the moment between.
  return [part(grows + out) * (1 - ejecting), ejecting];
}

export function openingsAt(
  circulation: Circulation,
  time: number,
  still: boolean,
  { atrioventricular, semilunar }: Standing,
): Openings {
  const [tricuspid, pulmonary] = still ? [1, 0] : rightValvesAt(circulation, time);
  return { tricuspid, pulmonary, mitral: atrioventricular, aortic: semilunar };
}
