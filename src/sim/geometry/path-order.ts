/** The path from a hepatic vein to the atrium as stretches of 0..1: what the grade line and the picture both count along. */
import type { Station } from "./geometry.ts";

export interface Stretch {
  readonly element: string;
  readonly from: number;
  readonly to: number;
}

/**
 * How blood gets from the lower vein to the lungs: the branches join; they are parted, the lower vein ending in the atrium
 * (at the Glenn stage); or a right ventricle stands between them.
 */
export type Course = "joined" | "parted" | "pumped";

/** Parts of the whole path that lie beyond the plane; the pathway's own elements share the rest by their length. */
const HEPATIC_VEIN = 0.07;
const RIGHT_VENTRICLE = 0.1;
const LUNG_BED = 0.22;
const PULMONARY_VEIN = 0.11;

/**
 * @param lower the inferior vena cava's branch, in the blood's order
 * @param lung the pulmonary artery's branch that the path follows
 */
export function pathOrder(lower: readonly Stretch[], lung: readonly Stretch[], course: Course): Station[] {
  const run = (stretches: readonly Stretch[]) => stretches.reduce((sum, { from, to }) => sum + to - from, 0);
  const beyond = {
    parted: HEPATIC_VEIN,
    joined: HEPATIC_VEIN + LUNG_BED + PULMONARY_VEIN,
    pumped: HEPATIC_VEIN + RIGHT_VENTRICLE + LUNG_BED + PULMONARY_VEIN,
  }[course];
  const scale = (1 - beyond) / (run(lower) + (course === "parted" ? 0 : run(lung)));
  const stations: Station[] = [{ element: "hepaticVein", from: 0, to: HEPATIC_VEIN }];
  const append = (element: string, length: number) => {
    const from = stations[stations.length - 1]!.to;
    stations.push({ element, from, to: from + length });
  };
  for (const { element, from, to } of lower) append(element, (to - from) * scale);
  if (course === "parted") return stations;
  if (course === "pumped") append("rightVentricle", RIGHT_VENTRICLE);
  for (const { element, from, to } of lung) append(element, (to - from) * scale);
  append("lungBed", LUNG_BED);
  append("pulmonaryVein", PULMONARY_VEIN);
  return stations;
}
