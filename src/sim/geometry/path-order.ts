/** The path from a liver vein to the atrium as stretches of 0..1: what the grade line and the picture both count along. */
import type { Station } from "./geometry.ts";

export interface Stretch {
  readonly element: string;
  readonly from: number;
  readonly to: number;
}

/** Parts of the whole path that lie beyond the plane; the pathway's own elements share the rest by their length. */
const LIVER_VEIN = 0.07;
const LUNG_BED = 0.22;
const PULMONARY_VEIN = 0.11;

/**
 * @param lower the inferior vena cava's branch, in the blood's order
 * @param lung the lung artery's branch that the path follows
 */
export function pathOrder(lower: readonly Stretch[], lung: readonly Stretch[]): Station[] {
  const stretches = [...lower, ...lung];
  const total = stretches.reduce((sum, { from, to }) => sum + to - from, 0);
  const scale = (1 - LIVER_VEIN - LUNG_BED - PULMONARY_VEIN) / total;
  const stations: Station[] = [{ element: "hepaticVein", from: 0, to: LIVER_VEIN }];
  const append = (element: string, length: number) => {
    const from = stations[stations.length - 1]!.to;
    stations.push({ element, from, to: from + length });
  };
  for (const { element, from, to } of stretches) append(element, (to - from) * scale);
  append("lungBed", LUNG_BED);
  append("pulmonaryVein", PULMONARY_VEIN);
  return stations;
}
