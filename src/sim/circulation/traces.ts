/** The watched cycle as curves in the trade's units. */
import { toLitresPerMinute, toMillilitre, toMmHg } from "../units.ts";
import type { Traces } from "./answer.ts";
import { INSPIRATORY_SHARE, pleuralPressure } from "./breathing.ts";
import * as at from "./compartments.ts";
import { CALF_SHARE, SAMPLES_PER_BEAT } from "./forcing.ts";
import type { Periodic } from "./periodic.ts";
import type { Recording } from "./recording.ts";

const flow = at.FLOW_INDEX;

export function tracesOf(periodic: Periodic, { sampled, period }: Recording): Traces {
  const { forcing, network, heartPeriod } = periodic;
  const samples = SAMPLES_PER_BEAT * forcing.beats;
  const closed = (value: (sample: number) => number) =>
    Float64Array.from({ length: samples + 1 }, (_, i) => value(i % samples));
  const pressure = (index: number) => closed((i) => toMmHg(sampled.pressures[index]![i]!));
  const volume = (index: number) => closed((i) => toMillilitre(sampled.states[index]![i]!));
  const along = (index: number) => closed((i) => toLitresPerMinute(sampled.states[index]![i]!));
  const across = (...indices: number[]) =>
    closed((i) => toLitresPerMinute(indices.reduce((sum, index) => sum + sampled.flows[index]![i]!, 0)));
  const halfSteps = (2 * forcing.steps) / SAMPLES_PER_BEAT;
  const outside = (table: Float64Array) => closed((i) => toMmHg(table[i * halfSteps]!));
  const rightHeart = network.connections.rightHeart;
  return {
    time: Float64Array.from({ length: samples + 1 }, (_, i) => (period * i) / samples),
    period,
    heartPeriod,
    pressures: {
      svc: pressure(at.UPPER),
      ivc: pressure(at.IVC),
      hepaticVein: closed((i) =>
        toMmHg(hepaticVein(sampled.pressures[at.IVC]![i]!, sampled.pressures[at.SPLANCHNIC]![i]!)),
      ),
      pathway: pressure(at.JUNCTION),
      pulmonaryArteryLeft: pressure(at.LUNG_LEFT),
      pulmonaryArteryRight: pressure(at.LUNG_RIGHT),
      pulmonaryVein: pressure(at.PULMONARY_VEINS),
      atrium: pressure(at.ATRIUM),
      ventricle: pressure(at.VENTRICLE),
      aorta: pressure(at.AORTA),
      pleural: outside(forcing.intrathoracic).map(pleuralPressure),
      alveolar: outside(forcing.alveolar),
      abdominal: outside(forcing.abdominal),
      calf: outside(forcing.muscle).map((value) => value / CALF_SHARE),
      ...(rightHeart
        ? { rightAtrium: pressure(at.RIGHT_ATRIUM), rightVentricle: pressure(at.RIGHT_VENTRICLE) }
        : {}),
    },
    flows: {
      systemic: across(flow.upperBed, flow.splanchnicBed, flow.legBed, flow.coronary),
      pulmonary: closed((i) =>
        toLitresPerMinute(sampled.states[at.LEFT_FLOW]![i]! + sampled.states[at.RIGHT_FLOW]![i]!),
      ),
      svc: along(at.SVC_FLOW),
      ivc: along(at.IVC_FLOW),
      left: along(at.LEFT_FLOW),
      right: along(at.RIGHT_FLOW),
      fenestration: across(flow.fenestration),
      aorta: across(flow.semilunarValve),
      atrioventricularValve: across(flow.atrioventricularValve),
      pulmonaryVein: across(flow.pulmonaryVeins),
      collaterals: across(flow.collateralLeft, flow.collateralRight),
      hepaticVein: across(flow.hepatic),
      legs: across(flow.legVeins),
      legBed: across(flow.legBed),
      splanchnic: across(flow.splanchnicBed),
      upper: across(flow.upperBed),
    },
    volumes: {
      ventricle: volume(at.VENTRICLE),
      atrium: volume(at.ATRIUM),
      lungLeft: volume(at.LUNG_LEFT),
      lungRight: volume(at.LUNG_RIGHT),
      pulmonaryVeins: volume(at.PULMONARY_VEINS),
      upperVeins: volume(at.UPPER),
      splanchnicVeins: volume(at.SPLANCHNIC),
      legVeins: volume(at.LEGS),
      ivc: volume(at.IVC),
      pathway: volume(at.JUNCTION),
      ...(rightHeart
        ? { rightAtrium: volume(at.RIGHT_ATRIUM), rightVentricle: volume(at.RIGHT_VENTRICLE) }
        : {}),
    },
  };
}

/**
 * Pa. Free hepatic-vein pressure: most of the drop from the abdominal veins to the IVC lies in the liver itself, since wedged exceeds
 * free pressure by 1.4 mmHg (physiology values, section 1); a seventh is left to the veins (teaching value).
 */
export const hepaticVein = (ivc: number, splanchnic: number): number => ivc + (splanchnic - ivc) / 7;

/** How a vein's flow (samples over a cycle) follows the breath: mean while breathing in over mean, and share of backward flow, %. */
export function breathShares(samples: Float64Array): { inspiratoryRatio: number; backwardPercent: number } {
  const inspired = Math.round(samples.length * INSPIRATORY_SHARE);
  let total = 0;
  let inspiration = 0;
  let backward = 0;
  samples.forEach((value, i) => {
    total += value;
    if (i < inspired) inspiration += value;
    if (value < 0) backward -= value;
  });
  return total > 0
    ? {
        inspiratoryRatio: inspiration / inspired / (total / samples.length),
        backwardPercent: (100 * backward) / total,
      }
    : { inspiratoryRatio: 1, backwardPercent: 0 };
}
