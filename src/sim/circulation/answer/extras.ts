/** Further outputs by name; units and meanings stand in outputs.ts. */
import { usualWeight } from "../../body/bsa.ts";
import { capillaryPressure } from "../../exchange/filtration.ts";
import { albuminOf } from "../../exchange/protein.ts";
import type { PathwayLoss } from "../../hydraulics/ledger.ts";
import type { PathwayEstimate, VeinShares } from "../../hydraulics/pathway-estimate.ts";
import { alveolarCarbonDioxide } from "../../oxygen/alveolar.ts";
import type { OxygenBalance } from "../../oxygen/mixing.ts";
import { numberSetting } from "../../parameters/parameters.ts";
import type { CirculationRequest } from "../../parameters/request.ts";
import { toElastance, toLitresPerMinute, toMillilitre, toMilliwatt, toMmHg } from "../../units.ts";
import * as at from "../network/compartments.ts";
import { totalVolume } from "../regulation/volume-rule.ts";
import type { Periodic } from "../search/periodic.ts";
import type { Circulation } from "./answer.ts";
import type { Recording } from "./recording.ts";
import { breathShares } from "./traces.ts";

/** The further outputs, each in the unit that outputs.ts gives for its name. */
export function extrasOf(
  request: CirculationRequest,
  { forcing, heartPeriod, point, network }: Periodic,
  recording: Recording,
  answer: Pick<Circulation, "pressures" | "flows"> & {
    readonly oxygen: OxygenBalance;
    readonly loss: PathwayLoss;
    readonly estimate: PathwayEstimate | undefined;
  },
): Readonly<Record<string, number>> {
  const { body } = request;
  const { pressures, flows, oxygen, loss, estimate } = answer;
  const across = (index: at.Flow) => toLitresPerMinute(recording.flows[index]);
  const pressure = (index: at.Compartment) => toMmHg(recording.pressures[index]);
  const lungFlow = across(at.LUNG_BED_LEFT) + across(at.LUNG_BED_RIGHT);
  const collateralFlow = across(at.COLLATERAL_LEFT) + across(at.COLLATERAL_RIGHT);
  const pulmonaryArteries =
    flows.pulmonary !== 0
      ? (pressures.pulmonaryArteryLeft * flows.left + pressures.pulmonaryArteryRight * flows.right) /
        flows.pulmonary
      : (pressures.pulmonaryArteryLeft + pressures.pulmonaryArteryRight) / 2;
  const stroke = recording.flows[at.SEMILUNAR_VALVE] * heartPeriod;
  const bloodVolume = toMillilitre(totalVolume(point));
  const ventricularPower = toMilliwatt(recording.energy.sources.ventricle ?? 0);
  const head = pressures.ivc - pressures.atrium;
  const breath = breathShares(recording.sampled.states[at.IVC_FLOW]);
  return {
    heartRate: 60 / heartPeriod,
    breathingRate: 60 / recording.period,
    cardiacIndex: flows.systemic / body.bsa,
    cardiacOutput: across(at.SEMILUNAR_VALVE),
    strokeVolume: toMillilitre(stroke),
    strokeIndex: toMillilitre(stroke) / body.bsa,
    endDiastolicVolume: toMillilitre(recording.endDiastolicVolume),
    endSystolicVolume: toMillilitre(recording.ventricleSmallest),
    ejectionFraction: 100 * (1 - recording.ventricleSmallest / recording.endDiastolicVolume),
    bloodVolume,
    bloodVolumePerKilogram: bloodVolume / usualWeight(body.bsa),
    lungFlow,
    collateralFlow,
    collateralIndex: collateralFlow / body.bsa,
    qpQs: flows.systemic > 0 ? lungFlow / flows.systemic : 0,
    svcShare: flows.svc + flows.ivc > 0 ? (100 * flows.svc) / (flows.svc + flows.ivc) : 0,
    leftShare: flows.pulmonary > 0 ? (100 * flows.left) / flows.pulmonary : 0,
    pulmonaryArteryPressure: pulmonaryArteries,
    transpulmonaryGradient: pulmonaryArteries - pressures.atrium,
    lungResistanceIndex: lungFlow > 0 ? ((pulmonaryArteries - pressures.atrium) / lungFlow) * body.bsa : 0,
    bodyResistanceIndex:
      flows.systemic > 0 ? ((pressures.aortaMean - pressures.svc) / flows.systemic) * body.bsa : 0,
    drivingHead: head,
    headShare: head > 0 ? (100 * loss.pressureDrop) / head : 0,
    ventricularPower,
    powerShare: ventricularPower > 0 ? (100 * loss.powerLoss) / ventricularPower : 0,
    splanchnicPressure: pressure(at.SPLANCHNIC),
    legVeinPressure: pressure(at.LEGS),
    capillaryPressureBelly: capillaryPressure(pressure(at.SPLANCHNIC)),
    capillaryPressureLegs: capillaryPressure(pressure(at.LEGS)),
    hepaticWedgeGradient: pressure(at.SPLANCHNIC) - pressures.hepaticVein,
    ivcInspiratoryRatio: breath.inspiratoryRatio,
    ivcBackward: breath.backwardPercent,
    hepaticInspiratoryRatio: breathShares(recording.sampled.flows[at.LIVER]).inspiratoryRatio,
    ...oxygenExtras(oxygen, estimate, body.bsa),
    venoVenousFlow: across(at.VENO_VENOUS),
    inletRegurgitation: percentOf(recording.inletBackward, across(at.ATRIOVENTRICULAR_VALVE)),
    outletRegurgitation: percentOf(recording.outletBackward, across(at.SEMILUNAR_VALVE)),
    endSystolicElastance: toElastance(network.ventricle.elastance) * point[at.CONTRACTILITY],
    strokeWork: ventricularPower * heartPeriod,
    albumin: albuminOf(numberSetting(request, "plasmaOncoticPressure")),
    carbonDioxide: alveolarCarbonDioxide(request),
    oxygenUsePerKilogram: oxygen.used / usualWeight(body.bsa),
    reflexHeartRate: point[at.RATE],
    reflexResistance: point[at.RESISTANCE],
    reflexContractility: point[at.CONTRACTILITY],
    reflexVenousTone: 100 * (1 - point[at.VENOUS_ROOM]),
    beatsPerBreath: forcing.beats,
    ...(network.connections.rightHeart ? rightHeartExtras(recording) : {}),
  };
}

function oxygenExtras(oxygen: OxygenBalance, estimate: PathwayEstimate | undefined, bsa: number) {
  return {
    mixedVenousSaturation: 100 * oxygen.mixedVenous,
    pulmonaryArterySaturation: 100 * oxygen.pulmonaryArtery,
    ...(oxygen.pulmonaryArteries && estimate
      ? {
          pulmonaryArterySaturationLeft: 100 * oxygen.pulmonaryArteries.left,
          pulmonaryArterySaturationRight: 100 * oxygen.pulmonaryArteries.right,
          hepaticShareLeft: percentLeft(estimate.shares.ivc),
        }
      : {}),
    coronarySinusSaturation: 100 * oxygen.coronary,
    oxygenDelivery: oxygen.delivery,
    oxygenDeliveryIndex: oxygen.delivery / bsa,
    oxygenUse: oxygen.used,
    oxygenMissing: oxygen.missing,
    oxygenExtraction: 100 * oxygen.extraction,
    hepaticVeinSaturation: 100 * oxygen.organs.gut,
    renalVeinSaturation: 100 * oxygen.organs.kidneys,
    legVeinSaturation: 100 * oxygen.organs.legs,
  };
}

function rightHeartExtras(recording: Recording) {
  return {
    rightAtrium: toMmHg(recording.pressures[at.RIGHT_ATRIUM]),
    rightVentricleSystolic: toMmHg(recording.rightVentricleHighest),
    pulmonaryArterySystolic: toMmHg(recording.pulmonaryArteryHighest),
    pulmonaryArteryDiastolic: toMmHg(recording.pulmonaryArteryLowest),
    rightVentricularPower: toMilliwatt(recording.energy.sources.rightVentricle ?? 0),
  };
}

/** What flows back (m3/s) in percent of all that went forward, `net` (L/min) being the difference. */
function percentOf(backward: number, net: number): number {
  const back = toLitresPerMinute(backward);
  return net + back > 0 ? (100 * back) / (net + back) : 0;
}
const percentLeft = ({ left, right }: VeinShares): number =>
  left + right > 0 ? (100 * left) / (left + right) : 0;
