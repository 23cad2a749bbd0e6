/** What two veins that face each other across a pulmonary artery lose; no handbook has a row for it, so its numbers are fitted to the 3D set. */
import type { PathwaySizes } from "../geometry/pathways/sizes.ts";
import { fromMillimetre } from "../units.ts";
import { type Element, type Fluid, quadraticLoss } from "./element.ts";
import type { LossConstants } from "./loss-law/constants.ts";
import { awayFromParting, clearance, type Streams } from "./loss-law/features.ts";
import { excessAt, PARTING, sideAt } from "./loss-law/parting.ts";

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

/**
 * Part (0.5 to 1) of a developed stream's two heads that the lower stream brings: where its lumen narrows, every streamline gains the same
 * head, so that the profile grows even, and within a conduit's length it does not develop again.
 */
export function lowerPart({ stage, ivc, trunk, trunkEnd }: PathwaySizes): number {
  if (stage === "atriopulmonary") return 1;
  const narrowed = Math.min(1, trunk / ivc) ** 4 * Math.min(1, trunkEnd / trunk) ** 4;
  return (1 + narrowed) / 2;
}

/** Clearances in mean radii at which 37 % is left: of the outlets' pull on the lower stream; of what streams lose that don't part. */
const PULL_REACH = 0.86;
const UNPARTED_REACH = 0.5;

/** Pa.s2/m6 of the lungs' flow: what each stream loses to the one that faces it. */
export function facingLosses(sizes: PathwaySizes, streams: Streams, fluid: Fluid, constants: LossConstants) {
  const { lower, left } = streams;
  const away = awayFromParting(sizes, streams);
  const side = sideAt(away, PARTING);
  const heads = (share: number, diameter: number) =>
    quadraticLoss(share ** 2, fromMillimetre(diameter), fluid);
  const below = lowerPart(sizes) * heads(lower, sizes.trunkEnd);
  const above = heads(1 - lower, sizes.svc);
  const mean = lower * below + (1 - lower) * above;
  const apart = clearance(sizes, constants.headOnPlace);
  const meets =
    2 *
    (constants.facing * headOn(apart, constants.clearance) +
      constants.unparted * headOn(away, UNPARTED_REACH));
  const lost = (own: number) => meets * (mean + constants.ownPart * (own - mean));
  const even = (heads(0.5, sizes.left) + heads(0.5, sizes.right)) / 2;
  const pull = even * side * (left - 0.5) * headOn(apart, PULL_REACH);
  const jet =
    heads(lower, sizes.trunk) * ((1 - sizes.narrowing) ** -4 - 1) * headOn(away, constants.jetReach);
  const spared = Math.exp(-constants.spared * excessAt(side, streams));
  return {
    ivc: Math.max(0, lost(below) * spared + constants.outlet * pull),
    svc: lost(above) + constants.jetFacing * jet,
  };
}
