/** What two veins that face each other across a pulmonary artery lose; no handbook has a row for it, so its numbers are fitted to the 3D set. */
import type { PathwaySizes } from "../geometry/pathways/sizes.ts";
import { fromMillimetre } from "../units.ts";
import { type Element, type Fluid, quadraticLoss } from "./element.ts";
import type { LossConstants } from "./loss-law/constants.ts";
import { clearance, excessAt, PARTING, type Streams, sideAt } from "./loss-law/features.ts";

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

/** Clearance in mean radii at which 37 % of the outlets' pull on the lower stream is left. */
const PULL_REACH = 0.86;

/** Pa.s2/m6 of the lungs' flow: what each stream loses to the one that faces it. */
export function facingLosses(sizes: PathwaySizes, streams: Streams, fluid: Fluid, constants: LossConstants) {
  const { lower, left } = streams;
  const side = sideAt(clearance(sizes, 0), PARTING);
  const heads = (share: number, diameter: number) =>
    quadraticLoss(share ** 2, fromMillimetre(diameter), fluid);
  const below = heads(lower, sizes.trunkEnd);
  const above = heads(1 - lower, sizes.svc);
  const mean = lower * below + (1 - lower) * above;
  const apart = clearance(sizes, constants.headOnPlace);
  const meets = 2 * constants.facing * headOn(apart, constants.clearance);
  const lost = (own: number) => meets * (mean + constants.ownPart * (own - mean));
  const even = (heads(0.5, sizes.left) + heads(0.5, sizes.right)) / 2;
  const pull = even * side * (left - 0.5) * headOn(apart, PULL_REACH);
  const jet = heads(lower, sizes.trunk) * ((1 - sizes.narrowing) ** -4 - 1);
  const spared = Math.exp(-constants.spared * excessAt(side, streams));
  return {
    ivc: Math.max(0, lost(below) * spared + constants.outlet * pull),
    svc: lost(above) + constants.jetFacing * jet,
  };
}
