/** What every handbook element answers, and the two conversions that all of them share. */

/** A Newtonian fluid. */
export interface Fluid {
  /** kg/m3 */
  readonly density: number;
  /** Pa.s */
  readonly viscosity: number;
}

/** Dp = a Q + b Q|Q| + inertance dQ/dt, all SI: Pa.s/m3, Pa.s2/m6, Pa.s2/m3. */
export interface Element {
  readonly a: number;
  readonly b: number;
  readonly inertance: number;
  readonly source: string;
  /** Reynolds numbers for which the source measured it */
  readonly validReynolds: readonly [number, number];
}

/** m2 of a round lumen of this diameter (m) */
export const lumenArea = (diameter: number): number => (Math.PI * diameter * diameter) / 4;

/** Reynolds number (dimensionless, 0 or more) of a flow (m3/s) by its mean velocity and the diameter (m). */
export const reynoldsNumber = (flow: number, diameter: number, fluid: Fluid): number =>
  (4 * fluid.density * Math.abs(flow)) / (Math.PI * fluid.viscosity * diameter);

/** b (Pa.s2/m6) of a loss coefficient K (dimensionless) on the dynamic head in a lumen of this diameter (m, above 0). */
export const quadraticLoss = (coefficient: number, diameter: number, fluid: Fluid): number =>
  (coefficient * fluid.density) / (2 * lumenArea(diameter) ** 2);

/** Pa.s2/m3 of a plug of blood; diameter and length in m. */
export const plugInertance = (diameter: number, length: number, fluid: Fluid): number =>
  (fluid.density * length) / lumenArea(diameter);
