import { entryAt, lastOf } from "../checked/present.ts";
import { type Element, type Fluid, lumenArea, quadraticLoss } from "./element.ts";

/** Part of a sharp edge's loss that is left when it is rounded to radius over (smaller) diameter: 0, 0.1, 0.15 (Crane). */
const ROUNDED: readonly (readonly [number, number])[] = [
  [0, 1],
  [0.1, 0.44],
  [0.15, 0.09],
];

/**
 * Loss coefficient (dimensionless) on the downstream head, 0.5 (1 - area ratio) for a sharp edge (Idelchik).
 * @param areaRatio smaller over larger area, 0 to 1
 * @param rounding ratio of the edge's radius to the smaller diameter, 0 or more
 */
export function suddenContraction(areaRatio: number, rounding: number): number {
  return 0.5 * (1 - areaRatio) * roundedPart(rounding);
}

function roundedPart(rounding: number): number {
  for (let i = 1; i < ROUNDED.length; i++) {
    const [low, kept] = entryAt(ROUNDED, i - 1);
    const [high, left] = entryAt(ROUNDED, i);
    if (rounding <= high) return kept + ((rounding - low) / (high - low)) * (left - kept);
  }
  return lastOf(ROUNDED)[1];
}

/** Narrowing from `before` to `after` over an edge of radius `edge` (each in m, `after` the smaller). */
export function contraction(before: number, after: number, edge: number, fluid: Fluid): Element {
  const coefficient = suddenContraction(lumenArea(after) / lumenArea(before), edge / after);
  return {
    a: 0,
    b: quadraticLoss(coefficient, after, fluid),
    inertance: 0,
    source: "contraction, sharp or rounded edge (Idelchik; Crane)",
    validReynolds: [3500, Number.POSITIVE_INFINITY],
  };
}
