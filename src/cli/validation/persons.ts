/** The persons of the validation table, each solved once. */
import type { Circulation } from "../../sim/circulation/answer.ts";
import { solve } from "../../sim/circulation/solve.ts";
import { occludeFenestration } from "../../sim/circulation/test-occlusion.ts";
import {
  type Body,
  CASES,
  type CirculationRequest,
  type ParameterValue,
  type Stage,
  type VolumeRule,
} from "../../sim/parameters/request.ts";

const request = (
  stage: Stage,
  body: Body,
  set: Readonly<Record<string, ParameterValue>> = {},
  volumeRule: VolumeRule = "hold-atrial-pressure",
): CirculationRequest => ({ kind: "circulation", stage, body, volumeRule, set });

const CHILD = CASES.caseA;
const ADULT = CASES.caseB;
/** As in J Card Surg 2024. */
const BEFORE = { ...CHILD, haemoglobin: 16.5 };
/** Mean age of Hjortdal 2003. */
const TWELVE: Body = { ageYears: 12.4, bsa: 1.3, haemoglobin: 14 };

export interface Persons {
  readonly before: Circulation;
  readonly child: Circulation;
  readonly childTunnel: Circulation;
  readonly childChamber: Circulation;
  readonly childOpen: Circulation;
  readonly childShut: Circulation;
  readonly childEarly: Circulation;
  readonly childEarlyOpen: Circulation;
  readonly childVentilator: Circulation;
  readonly twelve: Circulation;
  readonly twelveHalf: Circulation;
  readonly twelveWork: Circulation;
  readonly adult: Circulation;
  readonly adultWork: Circulation;
  readonly adultValsalva: Circulation;
  readonly adultCalves: Circulation;
  readonly healthy: Circulation;
  readonly healthyChild: Circulation;
}

export function solvePersons(): Persons {
  const { open, closed } = occludeFenestration(request("extracardiac", CHILD, { fenestrationDiameter: 4 }));
  const early = (fenestrationDiameter: number) =>
    solve(
      request("extracardiac", CHILD, { pulmonaryResistanceIndex: 3, fenestrationDiameter }, "hold-output"),
    );
  const twelve = (metabolicEquivalents: number) =>
    solve(request("extracardiac", TWELVE, { metabolicEquivalents }));
  return {
    before: solve(request("glenn", BEFORE)),
    child: solve(request("extracardiac", CHILD)),
    childTunnel: solve(request("lateral-tunnel", CHILD)),
    childChamber: solve(request("atriopulmonary", CHILD)),
    childOpen: open,
    childShut: closed,
    childEarly: early(0),
    childEarlyOpen: early(4),
    childVentilator: solve(request("extracardiac", CHILD, { breathing: "ventilator" })),
    twelve: twelve(1),
    twelveHalf: twelve(2.25),
    twelveWork: twelve(3.5),
    adult: solve(request("extracardiac", ADULT)),
    adultWork: solve(request("extracardiac", ADULT, { metabolicEquivalents: 4 })),
    adultValsalva: solve(request("extracardiac", ADULT, { breathing: "valsalva" })),
    adultCalves: solve(request("extracardiac", ADULT, { calfPumpPressure: 60 })),
    healthy: solve(request("two-ventricle", ADULT)),
    healthyChild: solve(request("two-ventricle", CHILD)),
  };
}
