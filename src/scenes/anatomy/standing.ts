/** How heart, lungs and diaphragm stand at a moment, read from the circulation's traces. */
import type { Circulation } from "../../sim/circulation/answer/answer.ts";
import type { ChestFrame } from "../../sim/geometry/geometry.ts";
import { lungSize, stretchTrace } from "../breathing/lung-stretch.ts";
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
export const OPEN = 0.12;
/** Part of a cavity's change that its muscle's outside follows: the wall keeps its volume. */
export const OUTSIDE = 0.35;

/** Linear size against the mean: the cube root of volume over its mean. */
export function swelling(volume: number, mean: number): number {
  return mean > 0 ? Math.cbrt(Math.max(volume, 0) / mean) : 1;
}

/** A chamber's linear size against its mean; 1 where the model gives no volume. */
export function chamberSize({ traces }: Circulation, name: string, time: number): number {
  const volume = traces.volumes[name];
  return volume ? swelling(valueAt(traces, volume, time), mean(volume)) : 1;
}

/** A chamber's linear size against that at its greatest volume. */
export function partOfFullest({ traces }: Circulation, name: string, time: number): number {
  const volume = traces.volumes[name];
  if (!volume) return 1;
  return swelling(
    valueAt(traces, volume, time),
    volume.reduce((a, b) => Math.max(a, b)),
  );
}

/** One of two ventricles. */
export type Ventricle = "ventricle" | "rightVentricle";

/** Part of its change by which its section follows: its valves hold it. */
const SECTION = 0.6;

/** Linear size of its section against that at its fullest. */
export const sectionOf = (circulation: Circulation, name: Ventricle, time: number): number =>
  1 + SECTION * (partOfFullest(circulation, name, time) - 1);

const mean = (values: Float64Array): number => values.reduce((sum, value) => sum + value, 0) / values.length;

/** What is read off a circulation's traces once. */
interface Known {
  readonly stretch: Float64Array | null;
  readonly most: ReadonlyMap<string, number>;
}

const known = new WeakMap<Circulation, Known>();

function knownOf(circulation: Circulation): Known {
  const before = known.get(circulation);
  if (before) return before;
  const { flows } = circulation.traces;
  const most = ["atrioventricularValve", "aorta"].map(
    (name) => [name, Math.max(1e-9, ...(flows[name] ?? []))] as const,
  );
  const made = { stretch: stretchTrace(circulation.traces), most: new Map(most) };
  known.set(circulation, made);
  return made;
}

/** Linear size of the lungs against rest. */
export function lungsAt(circulation: Circulation | null, time: number, still: boolean): number {
  const stretch = circulation && !still && knownOf(circulation).stretch;
  return stretch ? lungSize(valueAt(circulation.traces, stretch, time)) : STILL.lungs;
}

/** mm of a 5-year-old by which the dome goes down when the lungs are one part wider (12 % in a quiet breath: 5 mm). */
export const DESCENT = 40;
/**
 * mm: from which height the heart goes down with the dome, all of it at the height where the pathway ends, and evenly in between: pericardium
 * and dome have grown together. In truth the base goes down too (`circuit/sinking.ts`); here it hangs on a pathway whose computed plane stays.
 */
export const sinksFrom = ({ level, heartScale, ivc }: ChestFrame) => {
  const hinge = level + ROOF * heartScale;
  return { hinge, height: hinge - ivc.centre[1] };
};

/** mm of a 5-year-old's heart above the atrium's middle */
const ROOF = 4;

/** Part by which the model's deep breath widens the lungs, linear. */
export const DEEP = 0.29;

export function standingAt(circulation: Circulation | null, time: number, still: boolean): Standing {
  if (!circulation || still) return STILL;
  const { traces } = circulation;
  const { most } = knownOf(circulation);
  const open = (name: string): number => {
    const flow = traces.flows[name];
    if (!flow) return 0;
    return Math.min(1, Math.max(0, valueAt(traces, flow, time) / (OPEN * (most.get(name) ?? 1))));
  };
  return {
    ventricle: chamberSize(circulation, "ventricle", time),
    atrium: chamberSize(circulation, "atrium", time),
    atrioventricular: open("atrioventricularValve"),
    semilunar: open("aorta"),
    lungs: lungsAt(circulation, time, still),
  };
}
