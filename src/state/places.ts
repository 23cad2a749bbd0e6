/** Names that a view may highlight or zoom to. A test compares them with those of the pictures. */
import { PATHWAY_PARAMETERS } from "../sim/parameters/pathway-parameters.ts";

/** Places of the schematic; "greatVeins" highlights two of them. The last are elements of the path through a heart with two ventricles. */
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

/** Places that only the calf and the fluid exchange have. */
const FURTHER = ["valve", "drain"] as const;

export const CAMERAS: readonly string[] = ["whole", ...PATHWAY_PLACES];

/** Handles are named after the parameter that they edit. */
export const FOCUSES: readonly string[] = [
  ...new Set([
    ...CIRCUIT_PLACES,
    ...PATHWAY_PLACES,
    ...ELEMENTS,
    ...FURTHER,
    ...PATHWAY_PARAMETERS.map(({ name }) => name),
  ]),
];
