/** Puts a watched repeat into the answer's record: trade units, oxygen, fluid, ledger. */
import { usualWeight } from "../body/bsa.ts";
import { REGIONS, steadyExchange } from "../exchange/filtration.ts";
import { gradeLine } from "../hydraulics/grade-line.ts";
import type { PathwayFlows, PathwayLaw } from "../hydraulics/law.ts";
import { ledger, pathwayLoss } from "../hydraulics/ledger.ts";
import { type FlowSplit, holeFromBelow } from "../hydraulics/loss-law/features.ts";
import { type PathwayShares, pathwayEstimate } from "../hydraulics/pathway-estimate.ts";
import { pulmonaryVeinTension } from "../oxygen/alveolar.ts";
import { mixOxygen, type OxygenBalance } from "../oxygen/mixing.ts";
import { regionalUse } from "../oxygen/use.ts";
import { numberSetting } from "../parameters/parameters.ts";
import type { CirculationRequest } from "../parameters/request.ts";
import { toLitresPerMinute, toMilliwatt, toMmHg } from "../units.ts";
import type { Circulation } from "./answer.ts";
import * as at from "./compartments.ts";
import { extrasOf } from "./extras.ts";
import type { Periodic } from "./periodic.ts";
import type { Recording } from "./recording.ts";
import { hepaticVein, tracesOf } from "./traces.ts";

const flow = at.FLOW_INDEX;

export function answerOf(
  request: CirculationRequest,
  law: PathwayLaw,
  periodic: Periodic,
  recording: Recording,
  state: readonly number[],
): Circulation {
  const pressure = (index: number) => toMmHg(recording.pressures[index]!);
  const across = (index: number) => toLitresPerMinute(recording.flows[index]!);
  const along = (index: number) => toLitresPerMinute(recording.states[index]!);
  const pressures = {
    svc: pressure(at.UPPER),
    ivc: pressure(at.IVC),
    hepaticVein: toMmHg(hepaticVein(recording.pressures[at.IVC]!, recording.pressures[at.SPLANCHNIC]!)),
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
    systemic:
      across(flow.upperBed) + across(flow.splanchnicBed) + across(flow.legBed) + across(flow.coronary),
    pulmonary: along(at.LEFT_FLOW) + along(at.RIGHT_FLOW),
    svc: along(at.SVC_FLOW),
    ivc: along(at.IVC_FLOW),
    left: along(at.LEFT_FLOW),
    right: along(at.RIGHT_FLOW),
    fenestration: across(flow.fenestration),
  };
  const exchange = exchangeOf(request, pressures.svc, pressure(at.SPLANCHNIC), pressure(at.LEGS));
  const pathwayFlows = pathwayFlowsOf(law, recording);
  const loss = pathwayLoss(law, pathwayFlows);
  const estimate = pathwayEstimate(request, meanFlows(recording), loss);
  const oxygen = oxygenOf(request, periodic, recording, estimate?.shares);

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
      gradeLine: gradeLine(law, pathwayFlows, pressures),
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
      converged: periodic.reason === undefined,
      ...(periodic.reason ? { reason: periodic.reason } : {}),
    },
    extras: extrasOf(request, periodic, recording, { pressures, flows, oxygen, loss, estimate }),
    traces: tracesOf(periodic, recording),
    state,
  };
}

function pathwayFlowsOf(law: PathwayLaw, { sampled }: Recording): PathwayFlows {
  return {
    ivc: sampled.states[at.IVC_FLOW]!,
    svc: sampled.states[at.SVC_FLOW]!,
    left: sampled.states[at.LEFT_FLOW]!,
    right: sampled.states[at.RIGHT_FLOW]!,
    ...(law.fenestration ? { fenestration: sampled.flows[flow.fenestration]! } : {}),
  };
}

const meanFlows = ({ states }: Recording): FlowSplit => ({
  ivc: states[at.IVC_FLOW]!,
  svc: states[at.SVC_FLOW]!,
  left: states[at.LEFT_FLOW]!,
  right: states[at.RIGHT_FLOW]!,
});

function oxygenOf(
  request: CirculationRequest,
  { network }: Periodic,
  recording: Recording,
  shares: PathwayShares | undefined,
): OxygenBalance {
  const setting = (name: string) => numberSetting(request, name);
  const positive = (...indices: number[]) =>
    Math.max(0, toLitresPerMinute(indices.reduce((sum, index) => sum + recording.flows[index]!, 0)));
  const { connections } = network;
  return mixOxygen({
    flows: {
      upper: positive(flow.upperBed),
      lower: positive(flow.splanchnicBed, flow.legBed),
      coronary: positive(flow.coronary),
      collaterals: positive(flow.collateralLeft, flow.collateralRight),
      lungs: positive(flow.lungLeft, flow.lungRight),
      fenestrationForward: toLitresPerMinute(recording.fenestrationForward),
      fenestrationBackward: toLitresPerMinute(recording.fenestrationBackward),
    },
    lowerPassesLungs: connections.ivcInto !== "atrium",
    coronaryPassesLungs: connections.rightHeart,
    ...(shares
      ? {
          pathway: {
            holeFromBelow: holeFromBelow(request.stage, meanFlows(recording)),
            left: { ivc: shares.ivc.left, svc: shares.svc.left },
            right: { ivc: shares.ivc.right, svc: shares.svc.right },
          },
        }
      : {}),
    haemoglobin: request.body.haemoglobin,
    lungTension: pulmonaryVeinTension(setting("inspiredOxygen") / 100, setting("altitude")),
    use: regionalUse(setting("oxygenUseIndex") * request.body.bsa, setting("metabolicEquivalents")),
  });
}

/** mL/h: where the tissues settle if these pressures last, lymph not yet grown. Limbs see the mean of upper and leg veins. */
function exchangeOf(request: CirculationRequest, upper: number, abdomen: number, legs: number) {
  const setting = (name: string) => numberSetting(request, name);
  const venous = { limbs: (upper + legs) / 2, abdomen };
  const total = { filtration: 0, lymph: 0, overflow: 0 };
  for (const region of REGIONS) {
    const settled = steadyExchange(region, {
      venousPressure: venous[region.name],
      plasmaOncoticPressure: setting("plasmaOncoticPressure"),
      reflection: setting("proteinReflection"),
      leakage: setting("capillaryLeakage"),
      lymphMaximum: setting("lymphMaximum"),
      weight: usualWeight(request.body.bsa),
    });
    total.filtration += settled.filtration;
    total.lymph += settled.lymph;
    total.overflow += settled.overflow;
  }
  return total;
}
