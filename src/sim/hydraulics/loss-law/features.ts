/** The dimensionless quantities that the law fitted to the 3D set goes by, scaled so that each spans about one. */
import type { PathwaySizes } from "../../geometry/pathways/sizes.ts";
import { fromMillimetre } from "../../units.ts";
import { type Fluid, reynoldsNumber } from "../element.ts";

/** m3/s: the mean flows at which coefficients that depend on the split are taken. */
export interface FlowSplit {
  readonly ivc: number;
  readonly svc: number;
  readonly left: number;
  readonly right: number;
}

export const FEATURES = [
  "cavalOffset",
  "reynolds",
  "lowerShare",
  "leftShare",
  "pathwayEnd",
  "jointFlare",
  "pathwayNarrowing",
  "leftBranchStenosis",
  "rightBranchStenosis",
  "pathwayDiameter",
  "chamber",
  "tunnel",
] as const;
export type Feature = (typeof FEATURES)[number];

/** Part of the whole flow that a stream has at least where its share divides something. */
const LEAST_SHARE = 0.05;

export interface Streams {
  /** m3/s through both lungs, above 0 */
  readonly lungs: number;
  /** parts of it: from the lower vein (what a fenestration takes from it left out), and to the left lung */
  readonly lower: number;
  readonly left: number;
}

/** What runs from both veins into both lungs; shares are kept off 0 and 1, where nothing is divided any more. */
export function streamsOf({ svc, left, right }: FlowSplit): Streams {
  const lungs = left + right;
  if (!(lungs > 0)) return { lungs: 0, lower: 0.5, left: 0.5 };
  const kept = (share: number) => Math.min(1 - LEAST_SHARE, Math.max(LEAST_SHARE, share));
  return { lungs, lower: kept(1 - svc / lungs), left: kept(left / lungs) };
}

/** mm: mean radius of the two lumens that face each other */
export const facingRadius = (sizes: PathwaySizes): number =>
  ((sizes.stage === "atriopulmonary" ? sizes.ivc : sizes.trunkEnd) + sizes.svc) / 4;

/** Offset from where the streams truly meet head-on, over the facing lumens' mean radius. */
export const clearance = (sizes: PathwaySizes, headOnPlace: number): number =>
  (sizes.offset - headOnPlace * sizes.svc) / facingRadius(sizes);

export function featuresOf(
  sizes: PathwaySizes,
  { lungs, lower, left }: Streams,
  fluid: Fluid,
  headOnPlace: number,
): number[] {
  const chamber = sizes.stage === "atriopulmonary";
  const artery = (sizes.left + sizes.right) / 2;
  const ofTubes = (value: number) => (chamber ? 0 : value);
  const values: Record<Feature, number> = {
    cavalOffset: clearance(sizes, headOnPlace) * (chamber ? 0.5 : 1),
    reynolds: Math.log(reynoldsNumber(lungs / 2, fromMillimetre(artery), fluid) / 700),
    lowerShare: 4 * (lower - 0.55),
    leftShare: 4 * (left - 0.45),
    pathwayEnd: ofTubes(2 * Math.log(sizes.trunkEnd / sizes.svc)),
    jointFlare: ofTubes((3 * sizes.flare) / artery),
    pathwayNarrowing: 2 * ofTubes(sizes.narrowing),
    leftBranchStenosis: 3 * sizes.leftStenosis,
    rightBranchStenosis: 3 * sizes.rightStenosis,
    pathwayDiameter: 2 * Math.log(sizes.trunk / sizes.ivc),
    chamber: chamber ? 1 : 0,
    tunnel: sizes.stage === "lateral-tunnel" ? 0.5 : 0,
  };
  return FEATURES.map((name) => values[name]);
}

