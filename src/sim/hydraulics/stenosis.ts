import { type Element, type Fluid, lumenArea } from "./element.ts";

/** Young & Tsai 1973, loss of a blunt plug from Seeley & Young 1976; form confirmed in dogs (Young 1975). */
const TURBULENT_LOSS = 1.52;
const INERTIAL = 1.2;

/**
 * A constriction in a tube.
 * @param diameter m, of the tube
 * @param narrowest m
 * @param length m, of the constriction
 */
export function stenosis(diameter: number, narrowest: number, length: number, fluid: Fluid): Element {
  const area = lumenArea(diameter);
  const areaRatio = area / lumenArea(narrowest);
  const viscousLength = 0.83 * length + 1.64 * narrowest;
  const viscous = 32 * (viscousLength / diameter) * areaRatio ** 2;
  return {
    a: (viscous * fluid.viscosity) / (diameter * area),
    b: (TURBULENT_LOSS * fluid.density * (areaRatio - 1) ** 2) / (2 * area ** 2),
    inertance: (INERTIAL * fluid.density * length) / area,
    source: "stenosis (Young & Tsai 1973)",
    validReynolds: [100, 5000],
  };
}

/**
 * A constriction near the end of a branch: the part of its loss that its jet has lost before it passes the opening.
 * @param left m, from the constriction to the opening
 * @param jetLength diameters over which a jet loses 63 %
 */
export function stenosisBefore(whole: Element, left: number, diameter: number, jetLength: number): Element {
  const part = 1 - Math.exp(-left / (jetLength * diameter));
  return {
    ...whole,
    a: part * whole.a,
    b: part * whole.b,
    source: `${whole.source}; what its jet loses beyond the branch's opening is not counted`,
  };
}
