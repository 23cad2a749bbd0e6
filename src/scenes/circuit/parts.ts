/** Which vessels, organs and chambers a named place of the schematic is made of: what lights up when it is pointed at. */

const PARTS: Readonly<Record<string, readonly string[]>> = {
  svc: ["jugular", "svc"],
  ivc: ["lowerIvc", "ivc"],
  greatVeins: ["jugular", "svc", "lowerIvc", "ivc"],
  lungArtery: ["rightLungArtery", "leftLungArtery", "lungTrunk"],
  lungVein: ["rightPulmonaryVein", "leftPulmonaryVein"],
  lungBed: ["rightBed", "leftBed", "rightLung", "leftLung"],
  liver: ["liver", "liverBed", "hepatic"],
  gut: ["gut", "gutBed", "portal"],
  kidneys: ["rightKidney", "leftKidney", "rightKidneyBed", "leftKidneyBed"],
  aorta: ["arch", "descending"],
  atrium: ["atrium"],
  ventricle: ["ventricle", "rightVentricle"],
  pathway: ["conduit", "tunnel", "chamber", "pathway"],
  conduit: ["conduit"],
  tunnel: ["tunnel"],
  chamber: ["chamber", "pathway"],
  fenestration: ["fenestration"],
};

const NONE: ReadonlySet<string> = new Set();

/** Names of vessels, outlines and chambers' volumes; empty for a place that the schematic does not know. */
export const partsOf = (place: string | null): ReadonlySet<string> =>
  place && PARTS[place] ? new Set(PARTS[place]) : NONE;
