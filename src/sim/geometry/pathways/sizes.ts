/** Every length of a pathway in mm, from the request: the one place that outlines and handbook laws both read. */
import { findParameter, numberSetting } from "../../parameters/parameters.ts";
import { grown } from "../../parameters/pathway-parameters.ts";
import type { CirculationRequest, Stage } from "../../parameters/request.ts";

/** Every length of a pathway, mm; fractions and the discharge coefficient are dimensionless. */
export interface PathwaySizes {
  readonly stage: Stage;
  /** mm, inner diameters */
  readonly svc: number;
  readonly ivc: number;
  readonly hepaticVein: number;
  readonly left: number;
  readonly right: number;
  /** mm: conduit, tunnel, or width of the chamber */
  readonly trunk: number;
  /** mm: diameter with which the trunk meets the pulmonary arteries */
  readonly trunkEnd: number;
  /** mm: lower vein's joint to the pulmonary arteries' axis; height of the chamber */
  readonly trunkLength: number;
  /** mm: from the opening to the joint */
  readonly svcLength: number;
  readonly ivcLength: number;
  /** mm of the latter above the diaphragm: own vein that has grown beneath a conduit, which cannot */
  readonly ivcRisen: number;
  /** mm: from the joint's axis to the first branches in the lung */
  readonly leftLength: number;
  readonly rightLength: number;
  /** mm, positive towards the patient's left */
  readonly offset: number;
  /** mm */
  readonly flare: number;
  /** parts of the diameter taken away, 0..1 */
  readonly narrowing: number;
  readonly leftStenosis: number;
  readonly rightStenosis: number;
  /** mm; 0 = closed */
  readonly fenestration: number;
  /** 0..1 from the lower joint to the pulmonary arteries */
  readonly fenestrationPlace: number;
  readonly fenestrationDischarge: number;
}

/** mm: thickness of the wall that a fenestration passes, conduit or patch with its seam (common practice, no source). */
export const WALL_THICKNESS = 2;

/** A chamber's height over its width: a distended atrium is a little taller than wide (common practice, no source). */
const CHAMBER_HEIGHT = 1.2;

/**
 * Lengths in mm. Diameters: the normal values of docs/model-pathways.md at 5 and 20 years. Lengths at 5 years from the usual angiogram,
 * growing as body surface area to the half (common practice, no source); the cavae join the right pulmonary artery, so the left arm is longer.
 */
export function pathwaySizes(request: CirculationRequest): PathwaySizes {
  const { stage, body } = request;
  const diameter = (child: number, adult: number) => grown(child, adult, body.bsa);
  const length = (child: number) => child * Math.sqrt(body.bsa / 0.72);
  const setting = (name: string) => numberSetting(request, name);
  const svc = diameter(10.5, 16);
  const chambered = stage === "atriopulmonary";
  const trunk = trunkDiameter(request);
  const ivcRisen =
    stage === "extracardiac" ? Math.max(0, usualLength(request) - setting("conduitLength")) : 0;
  return {
    stage,
    svc,
    ivc: diameter(13.5, 18),
    hepaticVein: diameter(7, 10),
    left: diameter(10, 14.5),
    right: diameter(10.5, 15.5),
    trunk,
    // A tunnel ends in the stump of the upper vein, enlarged with a patch; a conduit keeps its width.
    trunkEnd: stage === "lateral-tunnel" ? Math.min(trunk, (trunk + svc) / 2) : trunk,
    trunkLength: chambered ? CHAMBER_HEIGHT * trunk : setting("conduitLength"),
    svcLength: length(chambered ? 24 : 30),
    ivcLength: length(24) + ivcRisen,
    ivcRisen,
    leftLength: length(56),
    rightLength: length(38),
    offset: setting("cavalOffset"),
    // The pulmonary arteries leave a chamber, and a heart, over sharp edges.
    flare: chambered || stage === "two-ventricle" ? 0 : setting("jointFlare"),
    narrowing: setting("pathwayNarrowing") / 100,
    leftStenosis: setting("leftBranchStenosis") / 100,
    rightStenosis: setting("rightBranchStenosis") / 100,
    fenestration: setting("fenestrationDiameter"),
    fenestrationPlace: setting("fenestrationPlace") / 100,
    fenestrationDischarge: setting("fenestrationDischarge"),
  };
}

/** mm from diaphragm to pulmonary arteries in this body, which a conduit bridges when it is new. */
const usualLength = ({ stage, body }: CirculationRequest): number =>
  numberSetting({ stage, body, set: {} }, "conduitLength");

/**
 * The setting `conduitLength` (mm, to the arteries' axis) of a conduit sewn into another body: its fabric keeps its length, to the arteries'
 * wall, while they widen.
 * Within the setting's range.
 * @param young at the operation
 */
export function sewnLength(request: CirculationRequest, young: CirculationRequest["body"]): number {
  const [then, now] = [pathwaySizes({ ...request, body: young }), pathwaySizes(request)];
  const grown = then.trunkLength + (Math.max(now.left, now.right) - Math.max(then.left, then.right)) / 2;
  const parameter = findParameter("conduitLength");
  return parameter?.kind === "number" ? Math.min(parameter.max, grown) : grown;
}

function trunkDiameter(request: CirculationRequest): number {
  switch (request.stage) {
    case "extracardiac":
      return numberSetting(request, "conduitDiameter");
    case "lateral-tunnel":
      return numberSetting(request, "tunnelDiameter");
    // Without a pathway, or before it, the size is not used.
    case "atriopulmonary":
    case "glenn":
    case "two-ventricle":
      return numberSetting(request, "chamberDiameter");
  }
}
