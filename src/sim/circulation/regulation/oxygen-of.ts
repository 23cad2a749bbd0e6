/** Oxygen of a circulation: its mean flows and its request put to the mixing of the blood. */

import { alveolarCarbonDioxide, pulmonaryVeinTension } from "../../oxygen/alveolar.ts";
import { contentAtSaturation, saturationOf, tensionOf } from "../../oxygen/content.ts";
import { type MixingRequest, mixContents } from "../../oxygen/mixing.ts";
import { CORONARY_SATURATION, organUse } from "../../oxygen/use.ts";
import { KIDNEY_SHARE } from "../../parameters/organ-flow.ts";
import { numberSetting } from "../../parameters/parameters.ts";
import type { CirculationRequest } from "../../parameters/request.ts";
import { toLitresPerMinute } from "../../units.ts";
import * as at from "../network/compartments.ts";
import { CONNECTIONS } from "../network/stages.ts";
import { upperBodyFactor } from "./brain-flow.ts";

/** m3/s: means over a cycle; what passes the fenestration forward, and backward (positive) */
export interface MeanFlows {
  readonly flows: at.Flows;
  readonly fenestrationForward: number;
  readonly fenestrationBackward: number;
}

/** What mixing is asked for, of any mean flows; all that the request alone decides is worked out once. */
export function mixingOf(
  request: CirculationRequest,
): (means: MeanFlows, pathway?: MixingRequest["pathway"]) => MixingRequest {
  const setting = (name: string) => numberSetting(request, name);
  const connections = CONNECTIONS[request.stage];
  const fixed = {
    lowerPassesLungs: connections.ivcInto !== "atrium",
    coronaryPassesLungs: connections.rightHeart,
    haemoglobin: request.body.haemoglobin,
    lungTension: pulmonaryVeinTension(request),
    lungShunt: setting("lungShunt") / 100,
    use: organUse(setting("oxygenUseIndex") * request.body.bsa, setting("metabolicEquivalents")),
  };
  return ({ flows, fenestrationForward, fenestrationBackward }, pathway) => {
    const positive = (flow: number) => Math.max(0, toLitresPerMinute(flow));
    const abdominal = positive(flows[at.SPLANCHNIC_BED]);
    return {
      ...fixed,
      ...(pathway ? { pathway } : {}),
      flows: {
        upper: positive(flows[at.UPPER_BED]),
        kidneys: KIDNEY_SHARE * abdominal,
        gut: (1 - KIDNEY_SHARE) * abdominal,
        legs: positive(flows[at.LEG_BED]),
        coronary: positive(flows[at.CORONARY]),
        collaterals: positive(flows[at.COLLATERAL_LEFT] + flows[at.COLLATERAL_RIGHT]),
        lungs: positive(flows[at.LUNG_BED_LEFT] + flows[at.LUNG_BED_RIGHT]),
        fenestrationForward: toLitresPerMinute(fenestrationForward),
        fenestrationBackward: toLitresPerMinute(fenestrationBackward),
        venoVenous: positive(flows[at.VENO_VENOUS]),
      },
    };
  };
}

/** How far the heart's vessels narrow and widen, as factors on their usual conductance (reserve four- to fivefold; textbook). */
const [NARROWEST, WIDEST] = [0.3, 6];
/** mL/dL: least difference that a flow is worked out from. */
const MIN_DIFFERENCE = 1;

/** Sets the factors of the beds that follow oxygen by a cycle's means: the heart's own and the upper body's. */
export function bedsFollowOxygen(request: CirculationRequest): (point: at.Point, means: MeanFlows) => void {
  const mixing = mixingOf(request);
  const { ageYears, haemoglobin } = request.body;
  const carbonDioxide = alveolarCarbonDioxide(request);
  return (point, means) => {
    const asked = mixing(means);
    const { arterial } = mixContents(asked);
    point[at.CORONARY_FLOW] = coronaryFactor(asked, arterial, point[at.CORONARY_FLOW]);
    const saturation = saturationOf(tensionOf(arterial, haemoglobin));
    point[at.UPPER_FLOW] = upperBodyFactor({ saturation, carbonDioxide }, ageYears);
  };
}

/**
 * The factor (dimensionless, 0.3 to 6) on the heart's vessels' usual conductance that lets the heart draw its use from arterial blood
 * (mL/dL of oxygen), down to the sinus's usual saturation; `present` is the factor in force.
 */
function coronaryFactor(
  { haemoglobin, use, flows }: MixingRequest,
  arterial: number,
  present: number,
): number {
  const left = contentAtSaturation(CORONARY_SATURATION, haemoglobin);
  const wanted = use.coronary / (10 * Math.max(MIN_DIFFERENCE, arterial - left));
  if (flows.coronary <= 0) return present;
  return Math.min(WIDEST, Math.max(NARROWEST, (present * wanted) / flows.coronary));
}
