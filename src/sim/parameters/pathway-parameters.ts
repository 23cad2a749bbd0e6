/** The settable sizes of the pathway and of its fenestration: rows of the parameter table. */
import type { NumberParameter } from "./parameter.ts";
import { round } from "./parameter-rows.ts";
import type { Body, Stage } from "./request.ts";

const TUBES: readonly Stage[] = ["lateral-tunnel", "extracardiac"];
const PATHWAYS: readonly Stage[] = ["atriopulmonary", ...TUBES];
const LUNG_JOINTS: readonly Stage[] = ["glenn", ...PATHWAYS];

/** Body surface area (m2) of the two bodies for which vessel sizes are tabulated. */
const CHILD_BSA = 0.72;
const ADULT_BSA = 1.72;

/**
 * A length (mm) that grows with the body: the power of body surface area that passes through both tabulated sizes.
 * Physiology values, section 9 (5 and 20 years); exponents come out between 0.1 and 0.5.
 */
export function grown(child: number, adult: number, bsa: number): number {
  const exponent = Math.log(adult / child) / Math.log(ADULT_BSA / CHILD_BSA);
  return child * (bsa / CHILD_BSA) ** exponent;
}

const grownDefault = (child: number, adult: number, step: number) => (_stage: Stage, body: Body) =>
  round(grown(child, adult, body.bsa), step);

const narrowing = (name: string, meaning: string, stages: readonly Stage[]): NumberParameter => ({
  kind: "number",
  name,
  group: "pathway",
  unit: "%",
  min: 0,
  max: 80,
  step: 1,
  default: 0,
  meaning,
  source: "definition; 30 % outweighs the choice of pathway (Haggerty 2014, Tang 2014)",
  stages,
});

export const PATHWAY_PARAMETERS: readonly NumberParameter[] = [
  {
    kind: "number",
    name: "conduitDiameter",
    group: "pathway",
    unit: "mm",
    min: 8,
    max: 30,
    step: 0.5,
    default: 18,
    meaning: "inner diameter of the extracardiac conduit; it does not grow",
    source: "16-24 mm in use (physiology values, section 9)",
    stages: ["extracardiac"],
  },
  {
    kind: "number",
    name: "conduitLength",
    group: "pathway",
    unit: "mm",
    min: 25,
    max: 90,
    step: 1,
    default: grownDefault(46, 60, 1),
    meaning: "length of conduit or tunnel, from the lower vein to the pulmonary arteries",
    source:
      "60 mm in an adult; 60-80 % of it at 2-4 years (Alexi-Meskishvili 2000, physiology values, section 9)",
    stages: TUBES,
  },
  {
    kind: "number",
    name: "tunnelDiameter",
    group: "pathway",
    unit: "mm",
    min: 8,
    max: 34,
    step: 0.5,
    default: grownDefault(18, 20, 0.5),
    meaning: "inner diameter of the tunnel along the atrial wall",
    source: "18 mm at 5 years, 20 mm at 20 years (physiology values, section 9)",
    stages: ["lateral-tunnel"],
  },
  {
    kind: "number",
    name: "chamberDiameter",
    group: "pathway",
    unit: "mm",
    min: 20,
    max: 100,
    step: 1,
    default: grownDefault(45, 65, 1),
    meaning: "width of the atrial chamber through which both great veins empty",
    source: "45 mm at 5 years, 65 mm at 20 years (physiology values, section 9)",
    stages: ["atriopulmonary"],
  },
  {
    kind: "number",
    name: "cavalOffset",
    group: "pathway",
    unit: "mm",
    min: -20,
    max: 20,
    step: 0.5,
    default: (stage) => (stage === "extracardiac" ? 4 : 0),
    meaning:
      "how far the lower vein's axis lies beside the upper vein's; positive towards the patient's left",
    source:
      "0 to one diameter in the bench studies (Dubini 1996, Ensley 1999); default common practice, no source",
    stages: PATHWAYS,
  },
  {
    kind: "number",
    name: "jointFlare",
    group: "pathway",
    unit: "mm",
    min: 0,
    max: 10,
    step: 0.5,
    default: 3,
    meaning: "radius to which the edges of the joint with the pulmonary arteries are rounded",
    source: "flared joints lose least (Ensley 1999); default common practice, no source",
    stages: ["glenn", ...TUBES],
  },
  narrowing("pathwayNarrowing", "narrowing of conduit or tunnel, as part of its diameter", TUBES),
  narrowing(
    "leftBranchStenosis",
    "narrowing of the left pulmonary artery, as part of its diameter",
    LUNG_JOINTS,
  ),
  narrowing(
    "rightBranchStenosis",
    "narrowing of the right pulmonary artery, as part of its diameter",
    LUNG_JOINTS,
  ),
  {
    kind: "number",
    name: "fenestrationDiameter",
    group: "fenestration",
    unit: "mm",
    min: 0,
    max: 8,
    step: 0.1,
    default: 0,
    meaning: "diameter of the hole between pathway and atrium; 0 = none",
    source: "3-6 mm, usually 4 (surgical practice, no source)",
    stages: PATHWAYS,
  },
  {
    kind: "number",
    name: "fenestrationPlace",
    group: "fenestration",
    unit: "%",
    min: 15,
    max: 85,
    step: 1,
    default: 50,
    meaning:
      "height of the fenestration along the pathway: 0 at the lower vein, 100 at the pulmonary arteries",
    source: "common practice, no source",
    stages: PATHWAYS,
  },
  {
    kind: "number",
    name: "fenestrationDischarge",
    group: "fenestration",
    unit: "1",
    min: 0.6,
    max: 0.8,
    step: 0.01,
    default: 0.7,
    meaning: "discharge coefficient: flow through the hole over the flow of an ideal hole of its size",
    source: "0.65-0.72 at Reynolds number 1000-2000 (Idelchik)",
    stages: PATHWAYS,
  },
];
