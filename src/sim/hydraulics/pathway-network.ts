/** From a request to the pathway's laws: each named section gets its relation, and together they meet the law fitted to the 3D set. */
import { BLOOD_DENSITY, bloodViscosity } from "../body/blood.ts";
import { present } from "../checked/present.ts";
import {
  courseOf,
  followedLung,
  type PathwaySections,
  pathwaySections,
  type Section,
} from "../geometry/pathways/sections.ts";
import { type PathwaySizes, pathwaySizes } from "../geometry/pathways/sizes.ts";
import type { CirculationRequest } from "../parameters/request.ts";
import { fromLitresPerMinute, fromMillimetre } from "../units.ts";
import { bend } from "./bend.ts";
import { contraction } from "./contraction.ts";
import { type Element, type Fluid, lumenArea } from "./element.ts";
import { expansion } from "./expansion.ts";
import { facingLosses, jointEntry, lowerPart, meeting } from "./facing-streams.ts";
import type { BranchName, ElementLaw, PathwayLaw } from "./law.ts";
import type { LossConstants } from "./loss-law/constants.ts";
import { fitted } from "./loss-law/correction.ts";
import { type FlowSplit, streamsOf } from "./loss-law/features.ts";
import { CONSTANTS } from "./loss-law/law-set.ts";
import { orifice } from "./orifice.ts";
import { developingPipe, pipe } from "./pipe.ts";
import { stenosis, stenosisBefore } from "./stenosis.ts";
import { division } from "./tee.ts";

/** mm: a smaller fenestration counts as none. */
const SMALLEST_HOLE = 0.05;

/**
 * The pathway of any stage as four branches that meet at one junction. At the Glenn stage the IVC's branch, and with two
 * ventricles both cavae's, end in the right atrium.
 * @param split mean flows, m3/s; when left out, those of {@link restingSplit}
 */
export function pathwayLaw(request: CirculationRequest, split?: FlowSplit): PathwayLaw {
  const flows = split ?? restingSplit(request);
  const base = baseLaw(request, flows);
  return base.course === "joined" ? fitted(base, pathwaySizes(request), flows) : base;
}

/** The relations alone, before the fit to the 3D set scales them. */
export function baseLaw(
  request: CirculationRequest,
  flows: FlowSplit,
  constants: LossConstants = CONSTANTS,
): PathwayLaw {
  const sizes = pathwaySizes(request);
  const sections = pathwaySections(sizes);
  const fluid = { density: BLOOD_DENSITY, viscosity: bloodViscosity(request.body.haemoglobin) };
  const place: Placement = { sizes, sections, fluid, flows, constants };
  const chain = (branch: BranchName) => sections[branch].map((section) => lawOf(section, branch, place));
  const hole = sizes.fenestration >= SMALLEST_HOLE && courseOf(request.stage) === "joined";
  const law = {
    fluid,
    course: courseOf(request.stage),
    gradeLung: followedLung(sizes),
    branches: { ivc: chain("ivc"), svc: chain("svc"), left: chain("left"), right: chain("right") },
  } as const;
  if (!hole) return law;
  const diameter = fromMillimetre(sizes.fenestration);
  const { a, b, source, validReynolds } = orifice(diameter, sizes.fenestrationDischarge, fluid);
  return { ...law, fenestration: { a, b, source, validReynolds, diameter } };
}

/** m3/s: an index of 3 L/min/m2 with 55 % from below and 45 % to the left lung. */
export function restingSplit({ stage, body }: CirculationRequest): FlowSplit {
  const total = fromLitresPerMinute(3 * body.bsa);
  const lungs = stage === "glenn" ? 0.45 * total : total;
  return { ivc: 0.55 * total, svc: 0.45 * total, left: 0.45 * lungs, right: 0.55 * lungs };
}

interface Placement {
  readonly sizes: PathwaySizes;
  readonly sections: PathwaySections;
  readonly fluid: Fluid;
  readonly flows: FlowSplit;
  readonly constants: LossConstants;
}

function lawOf(section: Section, branch: BranchName, place: Placement): ElementLaw {
  const { a, b, inertance, source, validReynolds } = relation(section, branch, place);
  const after = fromMillimetre(section.after);
  return {
    element: section.element,
    branch,
    a,
    b,
    inertance,
    source,
    validReynolds,
    factor: 1,
    areaAfter: lumenArea(after),
    diameter: fromMillimetre(section.narrowest ?? Math.min(section.before, section.after)),
    from: section.from,
    to: section.to,
  };
}

function relation(section: Section, branch: BranchName, place: Placement): Element {
  const { sizes, fluid, flows, constants } = place;
  const before = fromMillimetre(section.before);
  const after = fromMillimetre(section.after);
  const length = fromMillimetre(section.to - section.from);
  const flare = fromMillimetre(sizes.flare);
  switch (section.kind) {
    case "pipe":
      return pipe(before, length, fluid);
    case "artery":
      return developingPipe(before, length, flows[branch], fluid);
    case "exit":
      return expansion(before, after, fluid);
    case "areaChange":
      return after >= before ? expansion(before, after, fluid) : contraction(before, after, length, fluid);
    case "stenosis": {
      const whole = stenosis(before, fromMillimetre(present(section.narrowest)), length, fluid);
      if (branch === "ivc" || branch === "svc") return whole;
      const left = fromMillimetre(sizes[`${branch}Length`] - section.to);
      return stenosisBefore(whole, left, before, constants.jetLength);
    }
    case "turn":
      return bend(before, flare, fluid, constants.turn);
    case "jointEntry":
      return jointEntry(before, entryHeads(branch, place) * veinPart(branch, place), fluid);
    case "meeting":
      return meeting(facingLoss(branch, place));
    case "division":
      return division(before, speedRatio(before, flows[branch], sizes, flows), flare, fluid);
  }
}

/** Heads that a stream loses on entering the joint: fewer where it brings fewer, and where a flare leads it on. */
function entryHeads(branch: BranchName, { sizes, constants }: Placement): number {
  const led = Math.exp((-2 * constants.led * sizes.flare) / (sizes.left + sizes.right));
  return constants.jointEntry * led * (branch === "ivc" ? lowerPart(sizes) : 1);
}

/** Square of the part of a vein's blood that reaches the joint: a fenestration takes some before. */
function veinPart(branch: BranchName, { sizes, flows }: Placement): number {
  const { lungs, lower } = streamsOf(sizes.stage, flows);
  const vein = branch === "ivc" ? flows.ivc : flows.svc;
  const reaches = lungs * (branch === "ivc" ? lower : 1 - lower);
  return lungs > 0 && vein > 0 ? Math.min(1, reaches / vein) ** 2 : 1;
}

/** Pa.s2/m6 of a vein's own flow: what it loses to the stream that faces it. */
function facingLoss(branch: BranchName, place: Placement): number {
  const { sizes, fluid, flows, constants } = place;
  const streams = streamsOf(sizes.stage, flows);
  const lost = facingLosses(sizes, streams, fluid, constants);
  return branch === "ivc"
    ? (lost.ivc * veinPart(branch, place)) / streams.lower ** 2
    : (lost.svc * veinPart(branch, place)) / (1 - streams.lower) ** 2;
}

/** Mean velocity in a pulmonary artery over that in the common leg it leaves: chamber, upper vein, or the main pulmonary artery. */
function speedRatio(branch: number, branchFlow: number, sizes: PathwaySizes, flows: FlowSplit): number {
  const common = {
    atriopulmonary: sizes.trunk,
    glenn: sizes.svc,
    "lateral-tunnel": sizes.trunkEnd,
    extracardiac: sizes.trunkEnd,
    // The main pulmonary artery carries both branches: area as both together.
    "two-ventricle": Math.hypot(sizes.left, sizes.right),
  }[sizes.stage];
  const total = Math.abs(flows.left) + Math.abs(flows.right);
  if (total === 0) return 1;
  return Math.abs(branchFlow) / lumenArea(branch) / (total / lumenArea(fromMillimetre(common)));
}
