/** Names that a view may point at or come close to. A test holds them against what the pictures have. */
import { PATHWAY_PARAMETERS } from "../sim/parameters/pathway-parameters.ts";

/** Places of the schematic; "greatVeins" lights two of them. The last are elements of the way through a heart with two ventricles. */
export const CIRCUIT_PLACES = [
  "svc",
  "ivc",
  "greatVeins",
  "pulmonaryArtery",
  "pulmonaryVein",
  "lungBed",
  "liver",
  "gut",
  "kidneys",
  "aorta",
  "atrium",
  "ventricle",
  "pathway",
  "conduit",
  "tunnel",
  "chamber",
  "fenestration",
  "hepaticVein",
  "inferiorVenaCava",
  "superiorVenaCava",
  "lowerAtrialEntry",
  "upperAtrialEntry",
  "rightVentricle",
  "leftTurn",
  "rightTurn",
  "leftArtery",
  "rightArtery",
] as const;
export type CircuitPlace = (typeof CIRCUIT_PLACES)[number];

/** Places in the plane of a pathway. */
const PATHWAY_PLACES = [
  "svc",
  "ivc",
  "hepaticVein",
  "leftPulmonaryArtery",
  "rightPulmonaryArtery",
  "leftLung",
  "rightLung",
  "aorta",
  "atrium",
  "ventricle",
  "chamber",
  "tunnel",
  "conduit",
  "fenestration",
] as const;

/** Elements along the path that the grade line and the plane share. */
const ELEMENTS = [
  "inferiorVenaCava",
  "lowerAtrialEntry",
  "lowerChamberEntry",
  "conduitEntry",
  "upperConduit",
  "tunnelEntry",
  "upperTunnel",
  "tunnelExit",
  "lowerJointEntry",
  "lowerMeeting",
  "leftTurn",
  "rightTurn",
  "leftArtery",
  "rightArtery",
  "outerLeftArtery",
  "outerRightArtery",
  "pulmonaryVein",
] as const;

/** What the calf and the fluid exchange have of their own. */
const FURTHER = ["valve", "drain"] as const;

export const CAMERAS: readonly string[] = ["whole", ...PATHWAY_PLACES];

/** Handles go by the parameter that they edit. */
export const FOCUSES: readonly string[] = [
  ...new Set([
    ...CIRCUIT_PLACES,
    ...PATHWAY_PLACES,
    ...ELEMENTS,
    ...FURTHER,
    ...PATHWAY_PARAMETERS.map(({ name }) => name),
  ]),
];
