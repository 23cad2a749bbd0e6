/** What the 3D set spans: a pathway beyond it gets the wide band and is named as outside. */
import { entryAt } from "../../checked/present.ts";
import { FEATURES, type Feature } from "./features.ts";

/** Least and greatest value of each feature among the cases of one stage, dimensionless. */
export type Ranges = Readonly<Record<Feature, readonly [low: number, high: number]>>;

/** Part of a feature's span by which it may pass the set's ends. */
const MARGIN = 0.05;

/** @param points features of one stage's cases, dimensionless; at least one */
export const rangesOf = (points: readonly (readonly number[])[]): Ranges =>
  Object.fromEntries(
    FEATURES.map((name, k) => {
      const values = points.map((point) => entryAt(point, k));
      return [name, [Math.min(...values), Math.max(...values)]];
    }),
  ) as unknown as Ranges;

/** Features (dimensionless) that lie beyond the cases; all of them where a stage has no case yet. */
export function beyond(ranges: Ranges | undefined, at: readonly number[]): Feature[] {
  if (!ranges) return [...FEATURES];
  return FEATURES.filter((name, k) => {
    const [low, high] = ranges[name];
    const margin = MARGIN * (high - low);
    return entryAt(at, k) < low - margin - 1e-9 || entryAt(at, k) > high + margin + 1e-9;
  });
}
