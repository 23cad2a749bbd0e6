import { type Element, type Fluid, plugInertance, quadraticLoss, reynoldsNumber } from "./element.ts";

/** Reynolds number below which a pipe's flow stays laminar (White, Fluid Mechanics). */
export const LAMINAR_LIMIT = 2100;

/** Developed laminar pipe flow. Diameter (above 0) and length in m. */
export function pipe(diameter: number, length: number, fluid: Fluid): Element {
  return {
    a: (128 * fluid.viscosity * length) / (Math.PI * diameter ** 4),
    b: 0,
    inertance: plugInertance(diameter, length, fluid),
    source: "Hagen-Poiseuille (White, Fluid Mechanics)",
    validReynolds: [0, LAMINAR_LIMIT],
  };
}

/**
 * Pressure spent above developed friction on the way from a flat profile, in dynamic heads; rises to 1.25 when developed.
 * Shah's correlation of the apparent friction factor (Shah & London 1978), less the developed 64/Re.
 * @param inverseGraetz x / (D Re), dimensionless; 0 and less answer 0
 */
export function entranceExcess(inverseGraetz: number): number {
  if (inverseGraetz <= 0) return 0;
  const root = 13.76 * Math.sqrt(inverseGraetz);
  return root + (1.25 + 64 * inverseGraetz - root) / (1 + 0.00021 / inverseGraetz ** 2) - 64 * inverseGraetz;
}

/** Of the developed 1.25 heads one is no loss of total pressure: the parabola carries it on as kinetic energy. */
const CARRIED_ON = 1 / 1.25;

/** Laminar pipe into which blood comes with a flat profile, as after a sharp inlet; the excess is taken at `flow` (m3/s). Diameter and length in m. */
export function developingPipe(diameter: number, length: number, flow: number, fluid: Fluid): Element {
  const reynolds = Math.max(reynoldsNumber(flow, diameter, fluid), 1);
  const excess = (1 - CARRIED_ON) * entranceExcess(length / (diameter * reynolds));
  return {
    ...pipe(diameter, length, fluid),
    b: quadraticLoss(excess, diameter, fluid),
    source:
      "Hagen-Poiseuille with developing entrance (Shah & London 1978), less the kinetic energy carried on",
  };
}

/** m: the length in which a flat profile becomes a parabola (Durst 2005), of a pipe's diameter (m) and Reynolds number. */
export const entranceLength = (diameter: number, reynolds: number): number =>
  diameter * (0.619 ** 1.6 + (0.0567 * reynolds) ** 1.6) ** (1 / 1.6);
