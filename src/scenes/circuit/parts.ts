/** Which vessels, organs and chambers a named place of the schematic is made of: what lights up when it is pointed at. */
import type { CircuitPlace } from "../../state/places.ts";
import { KIDNEY_ARTERIES, KIDNEY_BEDS, KIDNEY_VEINS, namesOf } from "./belly-vessels.ts";

const SUPERIOR = ["leftBrachiocephalicVein", "rightBrachiocephalicVein", "upperCava", "svc"];
const LIVER = ["liver", ...namesOf("liver")];

const PARTS: Readonly<Record<CircuitPlace, readonly string[]>> = {
  svc: SUPERIOR,
  ivc: ["infrarenalCava", "lowerIvc", "ivc"],
  greatVeins: [...SUPERIOR, "infrarenalCava", "lowerIvc", "ivc"],
  pulmonaryArtery: ["rightPulmonaryArtery", "leftPulmonaryArtery", "lungTrunk"],
  pulmonaryVein: [
    "rightPulmonaryVein",
    "rightLowerPulmonaryVein",
    "leftPulmonaryVein",
    "leftLowerPulmonaryVein",
  ],
  lungBed: ["rightLung", "leftLung"],
  liver: LIVER,
  gut: ["gut", ...namesOf("gut")],
  kidneys: [
    "rightKidney",
    "leftKidney",
    ...[...KIDNEY_ARTERIES, ...KIDNEY_BEDS, ...KIDNEY_VEINS].map(({ name }) => name),
  ],
  aorta: ["arch", "thoracicAorta", "descending", "aorticFork"],
  atrium: ["atrium"],
  ventricle: ["ventricle", "rightVentricle"],
  pathway: ["conduit", "tunnel", "chamber", "pathway"],
  conduit: ["conduit"],
  tunnel: ["tunnel"],
  chamber: ["chamber", "pathway"],
  fenestration: ["fenestration"],
  // elements of the way through a heart with two ventricles
  hepaticVein: LIVER,
  inferiorVenaCava: ["infrarenalCava", "lowerIvc", "ivc"],
  superiorVenaCava: SUPERIOR,
  lowerAtrialEntry: ["rightAtrium"],
  upperAtrialEntry: ["rightAtrium"],
  rightVentricle: ["rightVentricle"],
  leftTurn: ["lungTrunk"],
  rightTurn: ["lungTrunk"],
  leftArtery: ["leftPulmonaryArtery"],
  rightArtery: ["rightPulmonaryArtery"],
};

const NONE: ReadonlySet<string> = new Set();

const SETS: ReadonlyMap<string, ReadonlySet<string>> = new Map(
  Object.entries(PARTS).map(([place, names]) => [place, new Set(names)]),
);

/** Names of vessels, outlines and chambers' volumes, the same set at each call; empty for a place that the schematic does not know. */
export const partsOf = (place: string | null): ReadonlySet<string> => SETS.get(place ?? "") ?? NONE;
