/** The brain, which lies in the upper body's bed, widens its vessels when its blood brings little oxygen or much carbon dioxide. */
import { byAge } from "../../body/growth.ts";

/** The brain's part of the upper body's flow: larger in a child (teaching values; an adult's 0.75 of some 2 L/min, textbook). */
const SHARE = { child: 0.6, adult: 0.4 };
/** Saturation (0..1) that a tension of some 60 mmHg goes with, above which vessels do not answer (textbook); carbon dioxide (mmHg) that the beds are stated at. */
const ANSWERS_BELOW = 0.9;
const USUAL_CARBON_DIOXIDE = 40;
/** Part of the brain's flow for each mmHg of carbon dioxide below and above the usual (2 and 4 %, from memory). */
const FOR_CARBON_DIOXIDE = { below: 0.02, above: 0.04 };
const [NARROWEST, WIDEST] = [0.5, 2.5];

/** The blood that reaches the brain: saturation (0..1), carbon dioxide (mmHg). */
export interface ArterialGas {
  /** 0..1 */
  readonly saturation: number;
  /** mmHg */
  readonly carbonDioxide: number;
}

/**
 * Factor (0.5 to 2.5) on the conductance of the brain's vessels: as saturation falls, flow rises so that the brain keeps its oxygen.
 * Thin blood is left to its viscosity.
 */
export function brainFactor({ saturation, carbonDioxide }: ArterialGas): number {
  const lack = Math.max(0, ANSWERS_BELOW / Math.max(0.1, saturation) - 1);
  const excess = carbonDioxide - USUAL_CARBON_DIOXIDE;
  const factor = 1 + lack + (excess < 0 ? FOR_CARBON_DIOXIDE.below : FOR_CARBON_DIOXIDE.above) * excess;
  return Math.min(WIDEST, Math.max(NARROWEST, factor));
}

/** Factor on the conductance of the whole upper body's bed, of a body of this age (years). */
export function upperBodyFactor(gas: ArterialGas, ageYears: number): number {
  return 1 + byAge(SHARE.child, SHARE.adult, ageYears) * (brainFactor(gas) - 1);
}
