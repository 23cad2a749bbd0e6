/** How heart, lungs and diaphragm stand at a moment, read from the circulation's traces. */
import type { Circulation } from "../../sim/circulation/answer.ts";
import { lungSize, stretchTrace } from "../breathing/chest.ts";
import { valueAt } from "../drawing/trace-clock.ts";

export interface Standing {
  /** linear size of a chamber's cavity against its mean */
  readonly ventricle: number;
  readonly atrium: number;
  /** 0 shut .. 1 open */
  readonly atrioventricular: number;
  readonly semilunar: number;
  /** linear size of the lungs against rest */
  readonly lungs: number;
}

/** Where nothing may move: the filling heart between two breaths. */
export const STILL: Standing = { ventricle: 1, atrium: 1, atrioventricular: 1, semilunar: 0, lungs: 1 };

/** Part of its greatest flow at which a valve stands open. */
const OPEN = 0.12;

/** Linear size against the mean: the cube root of volume over its mean. */
export function swelling(volume: number, mean: number): number {
  return mean > 0 ? Math.cbrt(Math.max(volume, 0) / mean) : 1;
}

/** A chamber's linear size against its mean; 1 where the model gives no volume. */
export function chamberSize({ traces }: Circulation, name: string, time: number): number {
  const volume = traces.volumes[name];
  return volume ? swelling(valueAt(traces, volume, time), mean(volume)) : 1;
}

const mean = (values: Float64Array): number => values.reduce((sum, value) => sum + value, 0) / values.length;

export function standingAt(circulation: Circulation | null, time: number, still: boolean): Standing {
  if (!circulation || still) return STILL;
  const { traces } = circulation;
  const open = (name: string): number => {
    const flow = traces.flows[name];
    if (!flow) return 0;
    const most = flow.reduce((a, b) => Math.max(a, b), 1e-9);
    return Math.min(1, Math.max(0, valueAt(traces, flow, time) / (OPEN * most)));
  };
  const stretch = stretchTrace(traces);
  return {
    ventricle: chamberSize(circulation, "ventricle", time),
    atrium: chamberSize(circulation, "atrium", time),
    atrioventricular: open("atrioventricularValve"),
    semilunar: open("aorta"),
    lungs: stretch ? lungSize(valueAt(traces, stretch, time)) : 1,
  };
}
