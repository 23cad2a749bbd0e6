import { type Element, type Fluid, lumenArea } from "./element.ts";

/**
 * A hole in a wall: the orifice equation Q = Cd A sqrt(2 Dp / rho), and Sampson's creeping flow (1891) so that flow is smooth
 * through zero. At 4 mm and 5 mmHg Sampson's part is about 2 % of the drop.
 * @param diameter m, above 0
 * @param discharge Cd
 */
export function orifice(diameter: number, discharge: number, fluid: Fluid): Element {
  return {
    a: (24 * fluid.viscosity) / diameter ** 3,
    b: fluid.density / (2 * (discharge * lumenArea(diameter)) ** 2),
    inertance: 0,
    source: "orifice, Cd at Reynolds 1000-2000 (Idelchik); creeping flow (Sampson 1891)",
    validReynolds: [500, 5000],
  };
}
