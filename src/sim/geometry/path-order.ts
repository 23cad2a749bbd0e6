/** The path from a hepatic vein to the atrium as fractions from 0 to 1: grade line and picture use the same ones. */

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
  const before = [{ element: "hepaticVein", part: HEPATIC_VEIN }];
  if (course === "parted") return stationsOf([...before, ...lower]);
  const pump = course === "pumped" ? [{ element: "rightVentricle", part: RIGHT_VENTRICLE }] : [];
  return stationsOf([...before, ...lower, ...pump, ...lung, ...LUNG]);
}

/**
 * The same for the upper vein's blood where the lower one's does not reach the lungs.
 * @param upper the superior vena cava's branch, mm
 */
export const upperPathOrder = (upper: readonly Stretch[], lung: readonly Stretch[]): Station[] =>
  stationsOf([...upper, ...lung, ...LUNG]);

/** `part` (0..1) of the whole path, whatever the length of the pathway's own elements. */
interface Beyond {
  readonly element: string;
  readonly part: number;
}

const LUNG: readonly Beyond[] = [
  { element: "lungBed", part: LUNG_BED },
  { element: "pulmonaryVein", part: PULMONARY_VEIN },
];

function stationsOf(row: readonly (Stretch | Beyond)[]): Station[] {
  const sum = (measure: (each: Stretch | Beyond) => number) =>
    row.reduce((total, each) => total + measure(each), 0);
  const length = (each: Stretch | Beyond) => ("part" in each ? 0 : each.to - each.from);
  const scale = (1 - sum((each) => ("part" in each ? each.part : 0))) / sum(length);
  let from = 0;
  return row.map((each) => {
    const to = from + ("part" in each ? each.part : length(each) * scale);
    const station = { element: each.element, from, to };
    from = to;
    return station;
  });
}
