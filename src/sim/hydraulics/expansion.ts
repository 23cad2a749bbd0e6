import { type Element, type Fluid, lumenArea, quadraticLoss } from "./element.ts";
import { LAMINAR_LIMIT } from "./pipe.ts";

/** Loss coefficient (dimensionless) on the upstream head; `areaRatio` = smaller over larger area, 0 to 1. Borda-Carnot, flat profiles. */
export const suddenExpansion = (areaRatio: number): number => (1 - areaRatio) ** 2;

/** The same loss coefficient (area ratio 0 to 1) with a developed round profile on both sides (momentum balance). */
export const suddenExpansionParabolic = (areaRatio: number): number =>
  2 - (8 / 3) * areaRatio + (2 / 3) * areaRatio ** 2;

/** The same loss coefficient (area ratio 0 to 1) between parallel plates (momentum balance): what a plane field without depth would show. */
export const suddenExpansionPlane = (areaRatio: number): number =>
  54 / 35 - (12 / 5) * areaRatio + (6 / 7) * areaRatio ** 2;

/** Sudden widening from `before` to `after` (m) of a stream with a developed profile; into a chamber it loses nearly its two heads. */
export function expansion(before: number, after: number, fluid: Fluid): Element {
  const coefficient = suddenExpansionParabolic(lumenArea(before) / lumenArea(after));
  return {
    a: 0,
    b: quadraticLoss(coefficient, before, fluid),
    inertance: 0,
    source: "sudden expansion of a developed stream (Borda-Carnot's momentum balance)",
    validReynolds: [30, LAMINAR_LIMIT],
  };
}
