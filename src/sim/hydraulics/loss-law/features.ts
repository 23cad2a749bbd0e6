/** The dimensionless quantities that the law fitted to the 3D set goes by, scaled so that each spans about one. */
import type { PathwaySizes } from "../../geometry/pathways/sizes.ts";
import type { Stage } from "../../parameters/request.ts";
import { fromMillimetre } from "../../units.ts";
import { type Fluid, reynoldsNumber } from "../element.ts";
import { awayFrom, nearness, PARTING } from "./parting.ts";

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
  "pathwayDiameter",
  "chamber",
  "tunnel",
  "leftBranchStenosis",
  "rightBranchStenosis",
] as const;
/** The interpolation goes by the first ten; a pulmonary artery's narrowing follows its relation, and only bounds the range. */
export const INTERPOLATED = 10;
export type Feature = (typeof FEATURES)[number];

/** Part of the whole flow that a stream has at least where its share divides something. */
const MIN_SHARE = 0.05;

/** The flow through the lungs and how it divides. */
export interface Streams {
  /** m3/s through both lungs, above 0 */
  readonly lungs: number;
  /** fractions of it: from the lower vein (what a fenestration takes left out), and to the left lung */
  readonly lower: number;
  readonly left: number;
}

/** Part of a fenestration's blood that is the lower vein's in a tube (0.90 to 0.94 in the 3D set); a chamber has mixed both. */
const HOLE_FROM_BELOW = 0.92;

/** Fraction (0 to 1) of a fenestration's blood that is the lower vein's; flows in m3/s. */
export function holeFromBelow(stage: Stage, { ivc, svc }: Pick<FlowSplit, "ivc" | "svc">): number {
  if (stage !== "atriopulmonary") return HOLE_FROM_BELOW;
  return ivc + svc > 0 ? ivc / (ivc + svc) : 0.5;
}

/** What runs from both veins into both lungs; shares are kept off 0 and 1, where nothing is divided any more. */
export function streamsOf(stage: Stage, flows: FlowSplit): Streams {
  const { ivc, svc, left, right } = flows;
  const lungs = left + right;
  if (!(lungs > 0)) return { lungs: 0, lower: 0.5, left: 0.5 };
  const kept = (share: number) => Math.min(1 - MIN_SHARE, Math.max(MIN_SHARE, share));
  const fromHole = ivc + svc - lungs;
  // Blood that comes back through a hole joins the lower stream.
  const below = fromHole > 0 ? holeFromBelow(stage, flows) : 1;
  return { lungs, lower: kept((ivc - below * fromHole) / lungs), left: kept(left / lungs) };
}

/** Whether blood runs on the mean from both veins into both lungs, and no share is too small to divide. */
export function runsThrough({ ivc, svc, left, right }: FlowSplit): boolean {
  const lungs = left + right;
  return (
    Math.min(ivc, svc, left, right) > 0 &&
    [svc, lungs - svc, left, right].every((flow) => flow >= MIN_SHARE * lungs)
  );
}

/** mm: mean radius of the two lumens that face each other */
const facingRadius = (sizes: PathwaySizes): number =>
  ((sizes.stage === "atriopulmonary" ? sizes.ivc : sizes.trunkEnd) + sizes.svc) / 4;

/**
 * Offset from where the streams truly meet head-on: number of mean radii of the facing lumens.
 * @param headOnPlace that place over the upper vein's diameter, dimensionless
 */
export const clearance = (sizes: PathwaySizes, headOnPlace: number): number =>
  (sizes.offset - headOnPlace * sizes.svc) / facingRadius(sizes);

/** Head that a narrowing adds to the lower stream, against the upper stream's: logarithm of one more than the ratio. */
export function jetStrength(sizes: PathwaySizes, { lower }: Pick<Streams, "lower">): number {
  if (sizes.stage === "atriopulmonary") return 0;
  const speeds = (lower / (1 - lower)) * (sizes.svc / sizes.trunk) ** 2;
  return Math.log(1 + speeds ** 2 * ((1 - sizes.narrowing) ** -4 - 1));
}

/** Clearance from where the losses' streams change sides: number of mean radii (dimensionless). */
export const awayFromParting = (sizes: PathwaySizes, streams: Pick<Streams, "lower">): number =>
  awayFrom(clearance(sizes, 0), jetStrength(sizes, streams), PARTING);

/** How much of the head-on hit is left, 0 to 1; a chamber's streams never settled in two ways. */
export const nearParting = (sizes: PathwaySizes, streams: Pick<Streams, "lower">): number =>
  sizes.stage === "atriopulmonary" ? 0 : nearness(awayFromParting(sizes, streams));

/** [FEATURES.length] in the order of {@link FEATURES}, dimensionless. */
export function featuresOf(sizes: PathwaySizes, streams: Streams, fluid: Fluid): number[] {
  const { lungs, lower, left } = streams;
  const chamber = sizes.stage === "atriopulmonary";
  const artery = (sizes.left + sizes.right) / 2;
  const ofTubes = (value: number) => (chamber ? 0 : value);
  const values: Record<Feature, number> = {
    // finest where the streams change sides: most changes there with little offset
    cavalOffset: Math.asinh(awayFromParting(sizes, streams) / PARTING.width) * (chamber ? 0.5 : 1),
    reynolds: Math.log(reynoldsNumber(lungs / 2, fromMillimetre(artery), fluid) / 700),
    lowerShare: 4 * (lower - 0.55),
    leftShare: 4 * (left - 0.45),
    pathwayEnd: ofTubes(2 * Math.log(sizes.trunkEnd / sizes.svc)),
    jointFlare: ofTubes((3 * sizes.flare) / artery),
    pathwayNarrowing: jetStrength(sizes, streams),
    leftBranchStenosis: 3 * sizes.leftStenosis,
    rightBranchStenosis: 3 * sizes.rightStenosis,
    pathwayDiameter: 2 * Math.log(sizes.trunk / sizes.ivc),
    chamber: chamber ? 1 : 0,
    tunnel: sizes.stage === "lateral-tunnel" ? 0.5 : 0,
  };
  return FEATURES.map((name) => values[name]);
}
