/** A pathway as four branches of named sections: the order and lengths that ledger, grade line and picture share. */

import { present } from "../../checked/present.ts";
import type { Stage } from "../../parameters/request.ts";
import type { Course } from "../path-order.ts";
import type { PathwaySizes } from "./sizes.ts";

/** The relation that a section obeys. */
type SectionKind =
  | "pipe"
  | "artery"
  | "areaChange"
  | "jointEntry"
  | "meeting"
  | "turn"
  | "division"
  | "stenosis"
  | "exit";

/** A part of a branch that obeys one hydraulic relation; lengths and diameters in mm. */
export interface Section {
  /** Message key of the ledger row, unique in the pathway. */
  readonly element: string;
  readonly kind: SectionKind;
  /** mm along the branch, the way blood usually goes: veins from their opening, pulmonary arteries from the joint */
  readonly from: number;
  readonly to: number;
  /** mm, at its begin and its end */
  readonly before: number;
  readonly after: number;
  /** stenosis only: mm at its narrowest */
  readonly narrowest?: number;
}

/** The four branches, each as its sections in order from 0 mm. */
export interface PathwaySections {
  readonly ivc: readonly Section[];
  readonly svc: readonly Section[];
  readonly left: readonly Section[];
  readonly right: readonly Section[];
}

/** Length over diameter of every narrowing (of the whole constriction, shoulders included). */
const NARROWING_LENGTH = 1;
/** Where along a pulmonary artery's straight part a narrowing sits. */
const STENOSIS_PLACE = 0.4;
/** Where along conduit or tunnel a narrowing sits. */
const TRUNK_PLACE = 0.5;

/** The sections (mm) of a stage's four branches, without gaps: each begins where the one before it ends. */
export function pathwaySections(sizes: PathwaySizes): PathwaySections {
  const lungs = {
    left: pulmonaryArtery(sizes, "left"),
    right: pulmonaryArtery(sizes, "right"),
  };
  switch (sizes.stage) {
    case "extracardiac":
      return { ivc: trunked(sizes, "conduit"), svc: meetingSvc(sizes), ...lungs };
    case "lateral-tunnel":
      return { ivc: trunked(sizes, "tunnel"), svc: meetingSvc(sizes), ...lungs };
    case "atriopulmonary":
      return {
        ivc: emptying(sizes, "ivc", "lowerChamberEntry", sizes.trunk, sizes.trunkLength / 2),
        svc: emptying(sizes, "svc", "upperChamberEntry", sizes.trunk, sizes.trunkLength / 2),
        ...lungs,
      };
    case "glenn":
      return {
        ivc: emptying(sizes, "ivc", "lowerAtrialEntry", 3 * sizes.ivc, sizes.ivc),
        svc: [vein("superiorVenaCava", sizes.svc, sizes.svcLength)],
        ...lungs,
      };
    case "two-ventricle":
      return {
        ivc: emptying(sizes, "ivc", "lowerAtrialEntry", 3 * sizes.ivc, sizes.ivc),
        svc: emptying(sizes, "svc", "upperAtrialEntry", 3 * sizes.ivc, sizes.ivc),
        ...lungs,
      };
  }
}

const vein = (element: string, diameter: number, length: number): Section => ({
  element,
  kind: "pipe",
  from: 0,
  to: length,
  before: diameter,
  after: diameter,
});

const VEINS = { ivc: "inferiorVenaCava", svc: "superiorVenaCava" } as const;

/** A great vein that opens into a chamber (mm across), in which its stream dies down within `reach` (mm). */
function emptying(
  sizes: PathwaySizes,
  name: "ivc" | "svc",
  entry: string,
  chamber: number,
  reach: number,
): Section[] {
  const diameter = sizes[name];
  const length = sizes[`${name}Length`];
  const exit = {
    element: entry,
    kind: "exit",
    from: length,
    to: length + reach,
    before: diameter,
    after: chamber,
  } as const;
  return [vein(VEINS[name], diameter, length), exit];
}

/** Half the joint's height: the stretch in which the streams meet. */
const jointReach = (sizes: PathwaySizes): number => Math.max(sizes.left, sizes.right) / 2 + sizes.flare;

function meetingSvc(sizes: PathwaySizes): Section[] {
  const end = sizes.svcLength;
  const meets = end - jointReach(sizes);
  return [vein("superiorVenaCava", sizes.svc, meets), ...joining("upper", meets, end, sizes.svc)];
}

/** A stream enters the joint, then meets the other one. */
function joining(side: "lower" | "upper", from: number, to: number, diameter: number): Section[] {
  const whole = { before: diameter, after: diameter };
  const middle = (from + to) / 2;
  return [
    { element: `${side}JointEntry`, kind: "jointEntry", from, to: middle, ...whole },
    { element: `${side}Meeting`, kind: "meeting", from: middle, to, ...whole },
  ];
}

function trunked(sizes: PathwaySizes, name: "conduit" | "tunnel"): Section[] {
  const { ivc, trunk, trunkEnd, ivcLength: joint } = sizes;
  const upper = name === "conduit" ? "upperConduit" : "upperTunnel";
  const end = joint + sizes.trunkLength;
  const meets = end - jointReach(sizes);
  const shoulder = Math.min(trunk / 3, (meets - joint) / 5);
  const taper = trunkEnd < trunk ? shoulder : 0;
  const sections: Section[] = [
    vein("inferiorVenaCava", ivc, joint),
    {
      element: `${name}Entry`,
      kind: "areaChange",
      from: joint,
      to: joint + shoulder,
      before: ivc,
      after: trunk,
    },
    ...interrupted([name, "pathwayNarrowing", upper], {
      kind: "pipe",
      from: joint + shoulder,
      to: meets - taper,
      diameter: trunk,
      taken: sizes.narrowing,
      place: TRUNK_PLACE,
    }),
  ];
  if (taper > 0) {
    sections.push({
      element: `${name}Exit`,
      kind: "areaChange",
      from: meets - taper,
      to: meets,
      before: trunk,
      after: trunkEnd,
    });
  }
  return [...sections, ...joining("lower", meets, end, trunkEnd)];
}

function pulmonaryArtery(sizes: PathwaySizes, side: "left" | "right"): Section[] {
  const diameter = sizes[side];
  const length = sizes[`${side}Length`];
  const stenosis = sizes[`${side}Stenosis`];
  const kind = sizes.stage === "extracardiac" || sizes.stage === "lateral-tunnel" ? "turn" : "division";
  const start = sizes.stage === "atriopulmonary" ? 0 : sizes.trunkEnd;
  const turned = Math.min(length / 4, start / 2 + diameter / 2);
  const outer = side === "left" ? "outerLeftArtery" : "outerRightArtery";
  return [
    { element: `${side}Turn`, kind, from: 0, to: turned, before: diameter, after: diameter },
    ...interrupted([`${side}Artery`, `${side}BranchStenosis`, outer], {
      kind: "artery",
      from: turned,
      to: length,
      diameter,
      taken: stenosis,
      place: STENOSIS_PLACE,
    }),
  ];
}

interface Stretch {
  readonly kind: "pipe" | "artery";
  /** mm along the branch */
  readonly from: number;
  readonly to: number;
  /** mm */
  readonly diameter: number;
  /** part of the diameter that the narrowing takes */
  readonly taken: number;
  /** part of the stretch at which it sits */
  readonly place: number;
}

/** A stretch of pipe, cut in two by a narrowing when there is one; the names of the first part, the narrowing and the part beyond it. */
function interrupted(
  [element, narrowing, beyond]: readonly [string, string, string],
  { kind, from, to, diameter, taken, place }: Stretch,
): Section[] {
  const whole = { before: diameter, after: diameter };
  if (taken <= 0) return [{ element, kind, from, to, ...whole }];
  const half = Math.min((NARROWING_LENGTH * diameter) / 2, (to - from) / 3);
  const middle = from + place * (to - from);
  const begins = Math.max(from, middle - half);
  const ends = begins + 2 * half;
  return [
    { element, kind, from, to: begins, ...whole },
    {
      element: narrowing,
      kind: "stenosis",
      from: begins,
      to: ends,
      narrowest: diameter * (1 - taken),
      ...whole,
    },
    { element: beyond, kind: "pipe", from: ends, to, ...whole },
  ];
}

/** How blood from the lower vein reaches the lungs at this stage. */
export const courseOf = (stage: Stage): Course =>
  stage === "two-ventricle" ? "pumped" : stage === "glenn" ? "parted" : "joined";

/** The lung that the path of the grade line follows: the more narrowed one, else the right. */
export const followedLung = ({ leftStenosis, rightStenosis }: PathwaySizes): "left" | "right" =>
  leftStenosis > rightStenosis ? "left" : "right";

/** Middle (mm along the branch) of the narrowing, or where one would be in the stretch `element`, which must exist. */
export function narrowingMiddle(sections: readonly Section[], element: string): number {
  const narrowed = sections.find(({ kind }) => kind === "stenosis");
  if (narrowed) return (narrowed.from + narrowed.to) / 2;
  const stretch = present(sections.find((section) => section.element === element));
  const place = stretch.kind === "artery" ? STENOSIS_PLACE : TRUNK_PLACE;
  return stretch.from + place * (stretch.to - stretch.from);
}
