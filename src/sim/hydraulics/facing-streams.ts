/** What two veins that face each other across a pulmonary artery lose; no handbook has a row for it, so its numbers are fitted to the 3D set. */
import { type Element, type Fluid, quadraticLoss } from "./element.ts";

const FITTED = "3D set of this project (docs/validation-three-d.md)";
/** Reynolds numbers in the veins of the set. */
const IN_SET: readonly [number, number] = [150, 2500];

/**
 * A developed stream brings two heads; what the turn towards a lung doesn't keep of them is lost.
 * @param diameter m
 * @param heads number of dynamic heads lost, 0 to 2
 */
export const jointEntry = (diameter: number, heads: number, fluid: Fluid): Element => ({
  a: 0,
  b: quadraticLoss(heads, diameter, fluid),
  inertance: 0,
  source: `a stream's own heads lost on entering the joint: ${FITTED}`,
  validReynolds: IN_SET,
});

/**
 * Fraction (0 to 1) of the head-on loss that is left when the axes pass each other: the fast cores miss at about one.
 * @param clearance number of mean radii between the axes
 * @param width clearance at which 37 % is left
 */
export const headOn = (clearance: number, width: number): number => Math.exp(-((clearance / width) ** 2));

/** Facing streams: `b` (Pa.s2/m6) as the flows share the loss out. */
export const meeting = (b: number): Element => ({
  a: 0,
  b,
  inertance: 0,
  source: `facing streams, as far as their fast cores hit: ${FITTED}`,
  validReynolds: IN_SET,
});
