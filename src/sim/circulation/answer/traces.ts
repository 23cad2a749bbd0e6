/** The watched cycle as curves in the trade's units. */
import { toLitresPerMinute, toMillilitre, toMmHg } from "../../units.ts";
import { INSPIRATORY_SHARE, pleuralPressure } from "../equations/breathing.ts";
import { SAMPLES_PER_BEAT } from "../equations/forcing.ts";
import * as at from "../network/compartments.ts";
import type { Periodic } from "../search/periodic.ts";
import type { Traces } from "./answer.ts";
import type { Recording } from "./recording.ts";

/** A sample that is there. */
const add = (one: number, other: number): number => one + other;
const of = (samples: Float64Array, i: number): number => samples[i] ?? 0;

/** The recorded cycle as curves, [samples + 1] each: the first value stands again at the end. */
export function tracesOf(periodic: Periodic, { sampled, period }: Recording): Traces {
  const { forcing, network, heartPeriod } = periodic;
  const samples = SAMPLES_PER_BEAT * forcing.beats;
  const closed = (value: (sample: number) => number) =>
    Float64Array.from({ length: samples + 1 }, (_, i) => value(i % samples));
  const pressure = (index: at.Compartment) => closed((i) => toMmHg(of(sampled.pressures[index], i)));
  const volume = (index: at.Compartment) => closed((i) => toMillilitre(of(sampled.states[index], i)));
  const along = (index: at.InertFlow) => closed((i) => toLitresPerMinute(of(sampled.states[index], i)));
  const across = (...indices: at.Flow[]) =>
    closed((i) => indices.map((index) => toLitresPerMinute(of(sampled.flows[index], i))).reduce(add));
  const halfSteps = (2 * forcing.steps) / SAMPLES_PER_BEAT;
  const outside = (table: Float64Array) => closed((i) => toMmHg(of(table, i * halfSteps)));
  const rightHeart = network.connections.rightHeart;
  return {
    time: Float64Array.from({ length: samples + 1 }, (_, i) => (period * i) / samples),
    period,
    heartPeriod,
    pressures: {
      svc: pressure(at.UPPER),
      ivc: pressure(at.IVC),
      hepaticVein: closed((i) =>
        toMmHg(hepaticVein(of(sampled.pressures[at.IVC], i), of(sampled.pressures[at.SPLANCHNIC], i))),
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
      calf: outside(forcing.muscle).map((value) => value / forcing.muscleShare),
      ...(rightHeart
        ? { rightAtrium: pressure(at.RIGHT_ATRIUM), rightVentricle: pressure(at.RIGHT_VENTRICLE) }
        : {}),
    },
    flows: {
      systemic: across(at.UPPER_BED, at.SPLANCHNIC_BED, at.LEG_BED, at.CORONARY),
      pulmonary: closed((i) =>
        toLitresPerMinute(of(sampled.states[at.LEFT_FLOW], i) + of(sampled.states[at.RIGHT_FLOW], i)),
      ),
      svc: along(at.SVC_FLOW),
      ivc: along(at.IVC_FLOW),
      left: along(at.LEFT_FLOW),
      right: along(at.RIGHT_FLOW),
      fenestration: across(at.FENESTRATION),
      aorta: across(at.SEMILUNAR_VALVE),
      atrioventricularValve: across(at.ATRIOVENTRICULAR_VALVE),
      pulmonaryVein: across(at.PULMONARY_VEINS_OUT),
      collaterals: across(at.COLLATERAL_LEFT, at.COLLATERAL_RIGHT),
      hepaticVein: across(at.LIVER),
      legs: across(at.LEG_VEINS),
      legBed: across(at.LEG_BED),
      workingMuscle: across(at.WORKING_MUSCLE),
      splanchnic: across(at.SPLANCHNIC_BED),
      upper: across(at.UPPER_BED),
      ...(rightHeart
        ? {
            tricuspidValve: across(at.RIGHT_ATRIOVENTRICULAR_VALVE),
            pulmonaryValve: across(at.RIGHT_SEMILUNAR_VALVE),
          }
        : {}),
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
