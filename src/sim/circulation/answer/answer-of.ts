/** Puts a watched cycle into the answer's record: trade units, oxygen, fluid, ledger. */
import { REGIONS, steadyExchange } from "../../exchange/filtration.ts";
import { lastingTissue } from "../../exchange/lasting-tissue.ts";
import { gradeLines } from "../../hydraulics/grade-line.ts";
import type { PathwayFlows, PathwayLaw } from "../../hydraulics/law.ts";
import { ledger, pathwayLoss } from "../../hydraulics/ledger.ts";
import { type FlowSplit, holeFromBelow } from "../../hydraulics/loss-law/features.ts";
import { type PathwayShares, pathwayEstimate } from "../../hydraulics/pathway-estimate.ts";
import { mixOxygen, type OxygenBalance } from "../../oxygen/mixing.ts";
import { ORGANS, type Organ, organUse } from "../../oxygen/use.ts";
import { numberSetting } from "../../parameters/parameters.ts";
import type { CirculationRequest } from "../../parameters/request.ts";
import { toLitresPerMinute, toMilliwatt, toMmHg } from "../../units.ts";
import * as at from "../network/compartments.ts";
import { mixingOf } from "../regulation/oxygen-of.ts";
import { heldBy } from "../regulation/volume-rule.ts";
import { HIGHEST_ATRIUM, type Periodic } from "../search/periodic.ts";
import type { Circulation } from "./answer.ts";
import { extrasOf } from "./extras.ts";
import { type Recording, record } from "./recording.ts";
import { hepaticVein, tracesOf } from "./traces.ts";

/**
 * @param state what a later search may start from
 * @param lasting the state whose pressures the tissues settle at: of rest, where `periodic` is only passed through
 */
export function answerOf(
  request: CirculationRequest,
  law: PathwayLaw,
  periodic: Periodic,
  state: readonly number[],
  lasting: Periodic = periodic,
): Circulation {
  const recording = record(periodic);
  const pressure = (index: at.Compartment) => toMmHg(recording.pressures[index]);
  const across = (index: at.Flow) => toLitresPerMinute(recording.flows[index]);
  const along = (index: at.InertFlow) => toLitresPerMinute(recording.states[index]);
  const pressures = {
    svc: pressure(at.UPPER),
    ivc: pressure(at.IVC),
    hepaticVein: toMmHg(hepaticVein(recording.pressures[at.IVC], recording.pressures[at.SPLANCHNIC])),
    pathway: pressure(at.JUNCTION),
    pulmonaryArteryLeft: pressure(at.LUNG_LEFT),
    pulmonaryArteryRight: pressure(at.LUNG_RIGHT),
    pulmonaryVein: pressure(at.PULMONARY_VEINS),
    atrium: pressure(at.ATRIUM),
    ventricleEndDiastolic: toMmHg(recording.endDiastolicPressure),
    aortaMean: pressure(at.AORTA),
    aortaSystolic: toMmHg(recording.aortaHighest),
    aortaDiastolic: toMmHg(recording.aortaLowest),
  };
  const flows = {
    systemic: across(at.UPPER_BED) + across(at.SPLANCHNIC_BED) + across(at.LEG_BED) + across(at.CORONARY),
    pulmonary: along(at.LEFT_FLOW) + along(at.RIGHT_FLOW),
    svc: along(at.SVC_FLOW),
    ivc: along(at.IVC_FLOW),
    left: along(at.LEFT_FLOW),
    right: along(at.RIGHT_FLOW),
    fenestration: across(at.FENESTRATION),
  };
  const exchange = exchangeOf(request, lasting === periodic ? recording : record(lasting));
  const pathwayFlows = pathwayFlowsOf(law, recording);
  const loss = pathwayLoss(law, pathwayFlows);
  const steady = meanFlows(recording);
  const estimate = pathwayEstimate(
    request,
    steady,
    loss,
    loss.powerLoss / pathwayLoss(law, steady).powerLoss,
  );
  const oxygen = mixOxygen(mixingOf(request)(recording, dividedBlood(request, recording, estimate?.shares)));
  const reason =
    periodic.reason ??
    notSurvived(
      request,
      recording.pressures[at.ATRIUM] - periodic.forcing.meanChest,
      pressures.aortaMean,
      oxygen,
    );

  const { energy } = recording;
  const inMilliwatt = (powers: Readonly<Record<string, number>>) =>
    Object.fromEntries(Object.entries(powers).map(([name, power]) => [name, toMilliwatt(power)]));
  return {
    request,
    pressures,
    flows,
    saturations: {
      arterial: 100 * oxygen.arterial,
      svc: 100 * oxygen.upper,
      ivc: 100 * oxygen.lower,
      pulmonaryVein: 100 * oxygen.pulmonaryVein,
    },
    pathway: {
      ...loss,
      band: estimate?.band ?? null,
      outsideSet: estimate?.outsideSet ?? [],
      ledger: ledger(law, pathwayFlows),
      ...gradeLines(law, pathwayFlows, pressures),
    },
    shares: estimate?.shares ?? null,
    energy: {
      in: toMilliwatt(energy.in),
      lost: toMilliwatt(energy.lost),
      residualPercent: energy.in > 0 ? (100 * (energy.in - energy.lost)) / energy.in : 0,
      sources: inMilliwatt(energy.sources),
      losses: inMilliwatt(energy.losses),
    },
    exchange,
    run: {
      beats: periodic.cycles * periodic.forcing.beats,
      seconds: periodic.cycles * recording.period,
      residual: periodic.residual,
      converged: reason === undefined,
      held: heldBy(request),
      ...(reason ? { reason } : {}),
    },
    extras: extrasOf(request, periodic, recording, { pressures, flows, oxygen, loss, estimate }),
    traces: tracesOf(periodic, recording),
    state,
  };
}

/** mmHg of mean arterial pressure, arterial saturation (0..1), part of what organs use at rest (what working legs use more makes up for nothing): below any of them no body lives on (teaching values, set low). */
const MIN_ARTERIAL = 30;
const MIN_SATURATION = 0.2;
const MIN_USE = 0.75;

const sumOver = (value: (organ: Organ) => number): number =>
  ORGANS.reduce((sum, organ) => sum + value(organ), 0);

/** Why the state that was found is none that a person survives, or undefined; the atrium's pressure (Pa) is that across its wall. */
function notSurvived(
  request: CirculationRequest,
  atrium: number,
  arterialMean: number,
  oxygen: OxygenBalance,
): string | undefined {
  if (arterialMean < MIN_ARTERIAL)
    return `no one survives these settings: mean arterial pressure would fall below ${MIN_ARTERIAL} mmHg`;
  if (toMmHg(atrium) > HIGHEST_ATRIUM)
    return `no one survives these settings: the lungs would fill with water, with more than ${HIGHEST_ATRIUM} mmHg across the atrium's wall`;
  if (oxygen.arterial < MIN_SATURATION)
    return `no one survives these settings: arterial saturation would fall below ${100 * MIN_SATURATION} %`;
  const atRest = organUse(numberSetting(request, "oxygenUseIndex") * request.body.bsa, 1);
  const met = sumOver((organ) => Math.min(oxygen.drawn[organ], atRest[organ]));
  if (met < MIN_USE * sumOver((organ) => atRest[organ]))
    return "no one survives these settings: a quarter of the oxygen that the organs need at rest would be missing";
  return undefined;
}

function pathwayFlowsOf(law: PathwayLaw, { sampled }: Recording): PathwayFlows {
  return {
    ivc: sampled.states[at.IVC_FLOW],
    svc: sampled.states[at.SVC_FLOW],
    left: sampled.states[at.LEFT_FLOW],
    right: sampled.states[at.RIGHT_FLOW],
    ...(law.fenestration ? { fenestration: sampled.flows[at.FENESTRATION] } : {}),
  };
}

/** Which vein's blood goes where, as the mixing asks for it. */
const dividedBlood = (request: CirculationRequest, recording: Recording, shares: PathwayShares | undefined) =>
  shares && {
    holeFromBelow: holeFromBelow(request.stage, meanFlows(recording)),
    left: { ivc: shares.ivc.left, svc: shares.svc.left },
    right: { ivc: shares.ivc.right, svc: shares.svc.right },
  };

const meanFlows = ({ states }: Recording): FlowSplit => ({
  ivc: states[at.IVC_FLOW],
  svc: states[at.SVC_FLOW],
  left: states[at.LEFT_FLOW],
  right: states[at.RIGHT_FLOW],
});

/** mL/h: where the tissues settle if these pressures last, lymph not yet grown. */
function exchangeOf(request: CirculationRequest, { pressures }: Recording) {
  const pressure = (index: at.Compartment) => toMmHg(pressures[index]);
  const veins = {
    request,
    pressures: {
      svc: pressure(at.UPPER),
      hepaticVein: hepaticVein(pressure(at.IVC), pressure(at.SPLANCHNIC)),
      atrium: pressure(at.ATRIUM),
    },
    extras: { legVeinPressure: pressure(at.LEGS), splanchnicPressure: pressure(at.SPLANCHNIC) },
  };
  const total = { filtration: 0, lymph: 0, overflow: 0 };
  for (const region of REGIONS) {
    const settled = steadyExchange(region, lastingTissue(region, veins));
    total.filtration += settled.filtration;
    total.lymph += settled.lymph;
    total.overflow += settled.overflow;
  }
  return total;
}
