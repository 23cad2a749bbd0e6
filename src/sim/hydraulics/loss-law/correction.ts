/** Scales a pathway's relations so that its mean drops are those of the law fitted to the 3D set. */

import { present } from "../../checked/present.ts";
import type { PathwaySizes } from "../../geometry/pathways/sizes.ts";
import type { BranchName, ElementLaw, PathwayLaw } from "../law.ts";
import { type FlowSplit, featuresOf, runsThrough, streamsOf } from "./features.ts";
import { fittedProcess } from "./law-set.ts";

/** Pa at mean flows: each vein's own relations, and both lungs' weighted by their flow. */
export interface BranchDrops {
  readonly ivc: number;
  readonly svc: number;
  readonly lungs: number;
}

/** No relation keeps less than this part, however the law would have it. */
const MIN_PART = 0.1;

const dropOf = (elements: readonly ElementLaw[], flow: number): number =>
  elements.reduce((sum, { a, b }) => sum + (a + b * Math.abs(flow)) * flow, 0);

/** Pa at these mean flows (m3/s), as {@link BranchDrops}; the lungs' flow must not be 0. */
export function branchDrops({ branches }: PathwayLaw, flows: FlowSplit): BranchDrops {
  const drop = (name: BranchName) => dropOf(branches[name], flows[name]);
  const lungs = flows.left + flows.right;
  return {
    ivc: drop("ivc"),
    svc: drop("svc"),
    lungs: (flows.left * drop("left") + flows.right * drop("right")) / lungs,
  };
}

/** W, what the lungs' blood loses; and Pa from the lower vein to the lungs. */
export function lossOf(
  { ivc, svc, lungs }: BranchDrops,
  { lower, lungs: flow }: { lower: number; lungs: number },
) {
  return { power: flow * (lower * ivc + (1 - lower) * svc + lungs), drop: ivc + lungs };
}

/** Factors (dimensionless) on the relations of the two veins and of the lungs. */
export interface Factors {
  readonly ivc: number;
  readonly svc: number;
  readonly lungs: number;
}

/**
 * Least change, each part weighed by the power it loses, for which the drop from either vein to the lungs is what is asked for:
 * ivc f + lungs g = lowerDrop, svc h + lungs g = upperDrop.
 * @param lower fraction of the lungs' blood that comes from below, 0 to 1
 * @param lowerDrop Pa
 * @param upperDrop Pa
 */
export function leastChange(base: BranchDrops, lower: number, lowerDrop: number, upperDrop: number): Factors {
  const veins = [
    { drop: base.ivc, weight: lower * base.ivc, missing: lowerDrop - base.ivc - base.lungs },
    { drop: base.svc, weight: (1 - lower) * base.svc, missing: upperDrop - base.svc - base.lungs },
  ];
  let pull = 0;
  let stiffness = base.lungs;
  let most = Number.POSITIVE_INFINITY;
  for (const { drop, weight, missing } of veins) {
    pull += (weight * base.lungs * missing) / drop ** 2;
    stiffness += (weight * base.lungs ** 2) / drop ** 2;
    most = Math.min(most, (missing + (1 - MIN_PART) * drop) / base.lungs);
  }
  const change = Math.max(MIN_PART - 1, Math.min(most, pull / stiffness));
  const [ivc, svc] = veins.map(({ drop, missing }) =>
    Math.max(MIN_PART, 1 + (missing - change * base.lungs) / drop),
  );
  return { ivc: present(ivc), svc: present(svc), lungs: 1 + change };
}

/** The law fitted to the 3D set; the relations alone where blood does not run from both veins into both lungs. */
export function fitted(base: PathwayLaw, sizes: PathwaySizes, flows: FlowSplit): PathwayLaw {
  if (!runsThrough(flows)) return base;
  const streams = streamsOf(sizes.stage, flows);
  const at = featuresOf(sizes, streams, base.fluid);
  const drops = branchDrops(base, flows);
  const plain = lossOf(drops, streams);
  const power = plain.power * Math.exp(fittedProcess("power").mean(at));
  const lowerDrop = plain.drop * Math.exp(fittedProcess("drop").mean(at));
  const upperDrop = (power / streams.lungs - streams.lower * lowerDrop) / (1 - streams.lower);
  const factors = leastChange(drops, streams.lower, lowerDrop, upperDrop);
  const scaled = (name: BranchName, factor: number) =>
    base.branches[name].map((each) => ({ ...each, a: factor * each.a, b: factor * each.b, factor }));
  return {
    ...base,
    branches: {
      ivc: scaled("ivc", factors.ivc),
      svc: scaled("svc", factors.svc),
      left: scaled("left", factors.lungs),
      right: scaled("right", factors.lungs),
    },
  };
}
