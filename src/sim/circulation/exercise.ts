/** What rises and falls together with exertion, as factors on the values at rest. */
import { numberSetting } from "../parameters/parameters.ts";
import type { CirculationRequest } from "../parameters/request.ts";

export interface Exertion {
  readonly heartRate: number;
  readonly contractility: number;
  /** conductance of the working legs, of belly and of upper body */
  readonly legFlow: number;
  readonly splanchnicFlow: number;
  readonly upperFlow: number;
  readonly lungResistance: number;
  /** part of the veins' unstressed volume given up, 0..1 */
  readonly venousTone: number;
  readonly breathingRate: number;
  readonly breathingDepth: number;
  /** mmHg of rhythmic muscle pressure on the calves */
  readonly calfPressure: number;
  /** factor on the arterial pressure that the reflex defends */
  readonly arterialMean: number;
}

/**
 * Linear in METs above rest, each with its ceiling. Slopes are teaching values, one set for all bodies and stages, chosen so that leg
 * work of 1 W/kg (about 3.5 MET) gives the lower body about twice its flow and the upper body its old one (Hjortdal 2003);
 * venous tone after physiology values, section 4, last line.
 */
export function exertion(request: CirculationRequest): Exertion {
  const above = numberSetting(request, "metabolicEquivalents") - 1;
  const rest = numberSetting(request, "heartRate");
  // Ceiling: 85 % of the usual greatest rate 220 - age (both common practice, no source).
  const ceiling = Math.max(1, (0.85 * (220 - request.body.ageYears)) / rest);
  return {
    heartRate: Math.min(ceiling, 1 + 0.14 * above),
    contractility: Math.min(1.6, 1 + 0.08 * above),
    legFlow: 1 + 0.95 * above,
    splanchnicFlow: Math.max(0.6, 1 - 0.05 * above),
    upperFlow: Math.max(0.8, 1 - 0.03 * above),
    lungResistance: Math.max(0.7, 1 / (1 + 0.05 * above)),
    venousTone: Math.min(0.2, 0.06 * above),
    breathingRate: Math.min(2.5, 1 + 0.2 * above),
    breathingDepth: Math.min(3, 1 + 0.2 * above),
    calfPressure: 60 * Math.min(1, above / 2),
    arterialMean: 1 + 0.03 * above,
  };
}
