/** What is asked of the circulation: the very record that `compute` takes, that a lesson step sets and that the controls edit. */

export const STAGES = ["two-ventricle", "glenn", "atriopulmonary", "lateral-tunnel", "extracardiac"] as const;

/** Which circulation: two ventricles, Glenn, or one of the three Fontan pathways. */
export type Stage = (typeof STAGES)[number];

/** The three stages in which all venous blood reaches the lungs through a pathway without a pump. */
export const PATHWAY_STAGES = ["atriopulmonary", "lateral-tunnel", "extracardiac"] as const;

/** A stage with a pathway without a pump. */
export type PathwayStage = (typeof PATHWAY_STAGES)[number];

/** True for the three stages of {@link PATHWAY_STAGES}. */
export const hasPathway = (stage: Stage): stage is PathwayStage =>
  (PATHWAY_STAGES as readonly Stage[]).includes(stage);

/** Stages whose flow is computed in a plane; with two ventricles the veins reach the lungs through a pump. */
export const hasPlane = (stage: Stage): boolean => stage !== "two-ventricle";

export const VOLUME_RULES = ["fixed-volume", "hold-atrial-pressure", "hold-output"] as const;

/** What is held while the solution is found; see docs/model-circulation.md. */
export type VolumeRule = (typeof VOLUME_RULES)[number];

/** The person's body; ranges in {@link BODY_RANGES}. */
export interface Body {
  /** years */
  readonly ageYears: number;
  /** body surface area, m2 */
  readonly bsa: number;
  /** g/dL */
  readonly haemoglobin: number;
}

/** g/dL: taken where a body does not say (common practice, no source). */
export const USUAL_HAEMOGLOBIN = 14;

/** Allowed range of one value of the body; numbers in `unit`. */
export interface BodyRange {
  readonly min: number;
  readonly max: number;
  readonly unit: string;
  readonly meaning: string;
  /** Taken when the value is left out; without it the value is required. */
  readonly usual?: number;
}

/** The persons whom the model is made for: the one table that address, lesson, compute and model read. */
export const BODY_RANGES = {
  ageYears: { min: 0.5, max: 80, unit: "years", meaning: "age" },
  bsa: { min: 0.3, max: 2.5, unit: "m2", meaning: "body surface area" },
  haemoglobin: { min: 7, max: 20, unit: "g/dL", meaning: "haemoglobin", usual: USUAL_HAEMOGLOBIN },
} as const satisfies Record<keyof Body, BodyRange>;

/** A parameter's value: a number in the unit that `parameters.ts` states, or one of its words. */
export type ParameterValue = number | string;

/** One circulation to solve. */
export interface CirculationRequest {
  readonly kind: "circulation";
  readonly stage: Stage;
  readonly body: Body;
  readonly volumeRule: VolumeRule;
  /** Parameters by name (see parameters.ts); those left out take their default for this stage and body. */
  readonly set: Readonly<Record<string, ParameterValue>>;
}

/** Invented demo bodies. */
export const CASES = {
  caseA: { ageYears: 5, bsa: 0.72, haemoglobin: USUAL_HAEMOGLOBIN },
  caseB: { ageYears: 19, bsa: 1.7, haemoglobin: USUAL_HAEMOGLOBIN },
} as const satisfies Record<string, Body>;

/**
 * The body at an age (years): linear between the two demo bodies, which it meets exactly, and beyond them. Body surface area in m2 and
 * haemoglobin in g/dL, rounded to what an address can carry.
 */
export function bodyAt(ageYears: number): Body {
  const { caseA, caseB } = CASES;
  const share = (ageYears - caseA.ageYears) / (caseB.ageYears - caseA.ageYears);
  const between = (key: "bsa" | "haemoglobin") =>
    Number((caseA[key] + (caseB[key] - caseA[key]) * share).toFixed(3));
  return { ageYears, bsa: between("bsa"), haemoglobin: between("haemoglobin") };
}

/** The same with the fenestration closed at the volume (mL) that the person has with it open: a test occlusion. */
export const occluded = (request: CirculationRequest, bloodVolume: number): CirculationRequest => ({
  ...request,
  volumeRule: "fixed-volume",
  set: { ...request.set, fenestrationDiameter: 0, bloodVolume },
});
