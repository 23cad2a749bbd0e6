/** Short ways to ask for the persons of the rows. */
import type { Circulation } from "../../sim/circulation/answer/answer.ts";
import { solve } from "../../sim/circulation/solve.ts";
import {
  type Body,
  CASES,
  type CirculationRequest,
  type ParameterValue,
  type Stage,
  type VolumeRule,
} from "../../sim/parameters/request.ts";
import { extra } from "./validation-row.ts";

export const CHILD = CASES.caseA;
/** As in J Card Surg 2024. */
export const BEFORE: Body = { ...CHILD, haemoglobin: 16.5 };

type Set = Readonly<Record<string, ParameterValue>>;

export const person = (
  stage: Stage,
  body: Body = CASES.caseB,
  set: Set = {},
  volumeRule: VolumeRule = "hold-atrial-pressure",
): CirculationRequest => ({ kind: "circulation", stage, body, volumeRule, set });

export const ask = (...asked: Parameters<typeof person>): Circulation => solve(person(...asked));

/** The adult after completion, and the healthy one. */
export const single = (set: Set = {}, rule?: VolumeRule) => ask("extracardiac", CASES.caseB, set, rule);
export const healthy = (set: Set = {}, rule?: VolumeRule) => ask("two-ventricle", CASES.caseB, set, rule);

export const met = (metabolicEquivalents: number) => ({ metabolicEquivalents });
export const index = (circulation: Circulation): number => extra(circulation, "cardiacIndex");
export const percent = (now: number, before: number): number => 100 * (now / before - 1);
