import { type Element, type Fluid, lumenArea, quadraticLoss } from "./element.ts";

/** Loss coefficient on the upstream head; `areaRatio` = smaller over larger area. Borda-Carnot, flat profiles. */
export const suddenExpansion = (areaRatio: number): number => (1 - areaRatio) ** 2;

/** The same with a developed round profile on both sides (momentum balance). */
export const suddenExpansionParabolic = (areaRatio: number): number =>
  2 - (8 / 3) * areaRatio + (2 / 3) * areaRatio ** 2;

/** The same between parallel plates (momentum balance): what a plane field without depth would show. */
export const suddenExpansionPlane = (areaRatio: number): number =>
  54 / 35 - (12 / 5) * areaRatio + (6 / 7) * areaRatio ** 2;

/** Sudden widening from `before` to `after` (m); into a chamber it loses the whole head. */
export function expansion(before: number, after: number, fluid: Fluid): Element {
  const coefficient = suddenExpansion(lumenArea(before) / lumenArea(after));
  return {
    a: 0,
    b: quadraticLoss(coefficient, before, fluid),
    inertance: 0,
    source: "sudden expansion (Borda-Carnot)",
    validReynolds: [3300, Number.POSITIVE_INFINITY],
  };
}
