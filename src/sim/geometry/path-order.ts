/** The path from a hepatic vein to the atrium as fractions from 0 to 1: grade line and picture use the same ones. */

import { lastOf } from "../checked/present.ts";
import type { Station } from "./geometry.ts";

/** A part of a branch; `from` and `to` in one unit for all parts (mm along the branch). */
export interface Stretch {
  readonly element: string;
  readonly from: number;
  readonly to: number;
}

/**
 * How blood gets from the lower vein to the lungs: the branches join; they are separate, the lower vein ending in the
 * atrium (Glenn stage); or a right ventricle pumps between them.
 */
export type Course = "joined" | "parted" | "pumped";

/** Fractions of the whole path that lie beyond the plane; the pathway's own elements share the rest in proportion to length. */
const HEPATIC_VEIN = 0.07;
const RIGHT_VENTRICLE = 0.1;
const LUNG_BED = 0.22;
const PULMONARY_VEIN = 0.11;

/**
 * The stations of the whole path as fractions of it, 0 to 1, in the blood's order.
 * @param lower the inferior vena cava's branch, in the blood's order, mm
 * @param lung the pulmonary artery's branch that the path follows, mm
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
    const from = lastOf(stations).to;
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
