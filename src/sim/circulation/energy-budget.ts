/**
 * The energy budget. Put in: what active walls and outside pressures do on the volumes, as -p dV/dt. Lost: each element's own law.
 * The two sides share no arithmetic, so that their difference tests the run.
 */

import type { Network, Path } from "./circuit-network.ts";
import * as at from "./compartments.ts";
import type { Scratch } from "./equations.ts";
import type { Forcing } from "./forcing.ts";

export interface EnergyBudget {
  /** W, means */
  readonly sources: Readonly<Record<string, number>>;
  readonly losses: Readonly<Record<string, number>>;
  readonly in: number;
  readonly lost: number;
}

const SOURCES = [
  "ventricle",
  "atrium",
  "rightVentricle",
  "rightAtrium",
  "breathing",
  "muscle",
  "stored",
] as const;
const LOSSES = [
  "atrioventricularValve",
  "semilunarValve",
  "aorta",
  "upperBed",
  "splanchnicBed",
  "legBed",
  "coronary",
  "collaterals",
  "hepatic",
  "legVeins",
  "collapsingVeins",
  "pathwayIvc",
  "pathwaySvc",
  "pathwayLeft",
  "pathwayRight",
  "fenestration",
  "lungLeft",
  "lungRight",
  "pulmonaryVeins",
  "rightAtrioventricularValve",
  "rightSemilunarValve",
] as const;

/** What stretched vessels and moving blood give back; over a cycle that returns it is nothing, and is left out of the budget. */
const STORED = SOURCES.indexOf("stored");

// Own copies, as in equations.ts: what follows runs once a step.
const {
  AORTA,
  AORTA_FLOW,
  ARTERIES,
  ATRIUM,
  IVC,
  IVC_FLOW,
  JUNCTION,
  LEFT_FLOW,
  LEGS,
  LUNG_LEFT,
  LUNG_RIGHT,
  PULMONARY_VEINS,
  RIGHT_ATRIUM,
  RIGHT_FLOW,
  RIGHT_VENTRICLE,
  SPLANCHNIC,
  SVC_FLOW,
  UPPER,
  VENTRICLE,
} = at;

export interface Powers {
  /** Counts one step: its state, rates of change, and what its evaluation left behind. */
  add(step: number, state: Float64Array, rates: Float64Array, scratch: Scratch): void;
  /** sums over the steps, W */
  readonly sources: Float64Array;
  readonly losses: Float64Array;
}

export function watchPowers(network: Network, forcing: Forcing): Powers {
  const sources = new Float64Array(SOURCES.length);
  const losses = new Float64Array(LOSSES.length);
  const rightHeart = network.connections.rightHeart;
  const coronaryEnd = rightHeart ? RIGHT_ATRIUM : ATRIUM;
  const { aortaResistance, aortaInertance } = network;
  const { svc, ivc, left, right } = network.branches;
  return {
    sources,
    losses,
    add(step, state, rates, { pressures: p, flows: q, collapse }) {
      const intrathoracic = forcing.intrathoracic[2 * step]!;
      const abdominal = forcing.abdominal[2 * step]!;
      const muscle = forcing.muscle[2 * step]!;
      sources[0]! += released(p, rates, VENTRICLE, intrathoracic);
      sources[1]! += released(p, rates, ATRIUM, intrathoracic);
      if (rightHeart) {
        sources[2]! += released(p, rates, RIGHT_VENTRICLE, intrathoracic);
        sources[3]! += released(p, rates, RIGHT_ATRIUM, intrathoracic);
      }
      const inThorax =
        rates[VENTRICLE]! +
        rates[ATRIUM]! +
        rates[AORTA]! +
        rates[JUNCTION]! +
        rates[LUNG_LEFT]! +
        rates[LUNG_RIGHT]! +
        rates[PULMONARY_VEINS]! +
        rates[RIGHT_ATRIUM]! +
        rates[RIGHT_VENTRICLE]!;
      sources[4]! -= intrathoracic * inThorax + abdominal * (rates[SPLANCHNIC]! + rates[IVC]!);
      sources[5]! -= muscle * rates[LEGS]!;
      sources[STORED]! +=
        released(p, rates, AORTA, intrathoracic) +
        released(p, rates, JUNCTION, intrathoracic) +
        released(p, rates, LUNG_LEFT, intrathoracic) +
        released(p, rates, LUNG_RIGHT, intrathoracic) +
        released(p, rates, PULMONARY_VEINS, intrathoracic) +
        released(p, rates, SPLANCHNIC, abdominal) +
        released(p, rates, IVC, abdominal) +
        released(p, rates, LEGS, muscle) +
        released(p, rates, ARTERIES, 0) +
        released(p, rates, UPPER, 0) +
        slowing(state, rates, AORTA_FLOW, aortaInertance) +
        slowing(state, rates, SVC_FLOW, svc.inertance) +
        slowing(state, rates, IVC_FLOW, ivc.inertance) +
        slowing(state, rates, LEFT_FLOW, left.inertance) +
        slowing(state, rates, RIGHT_FLOW, right.inertance);

      losses[0]! += across(p, q, 0, ATRIUM, VENTRICLE);
      losses[1]! += across(p, q, 1, VENTRICLE, AORTA);
      losses[2]! += aortaResistance * square(state[AORTA_FLOW]!);
      losses[3]! += across(p, q, 2, ARTERIES, UPPER);
      losses[4]! += across(p, q, 3, ARTERIES, SPLANCHNIC);
      losses[5]! += across(p, q, 4, ARTERIES, LEGS);
      losses[6]! += across(p, q, 5, ARTERIES, coronaryEnd);
      losses[7]! += across(p, q, 6, ARTERIES, LUNG_LEFT) + across(p, q, 7, ARTERIES, LUNG_RIGHT);
      losses[8]! += across(p, q, 8, SPLANCHNIC, IVC);
      losses[9]! += across(p, q, 9, LEGS, IVC);
      losses[10]! +=
        svc.a * (collapse[0]! - 1) * square(state[SVC_FLOW]!) +
        ivc.a * (collapse[3]! - 1) * square(state[IVC_FLOW]!);
      losses[11]! += path(ivc, state[IVC_FLOW]!);
      losses[12]! += path(svc, state[SVC_FLOW]!);
      losses[13]! += path(left, state[LEFT_FLOW]!);
      losses[14]! += path(right, state[RIGHT_FLOW]!);
      losses[15]! += across(p, q, 10, JUNCTION, ATRIUM);
      losses[16]! += across(p, q, 11, LUNG_LEFT, PULMONARY_VEINS);
      losses[17]! += across(p, q, 12, LUNG_RIGHT, PULMONARY_VEINS);
      losses[18]! += across(p, q, 13, PULMONARY_VEINS, ATRIUM);
      losses[19]! += across(p, q, 14, RIGHT_ATRIUM, RIGHT_VENTRICLE);
      losses[20]! += across(p, q, 15, RIGHT_VENTRICLE, JUNCTION);
    },
  };
}

// Not within `add`: a function made anew each step costs more than what it computes.
/** W that a wall gives off, against what stands outside it. */
const released = (pressures: Float64Array, rates: Float64Array, index: number, outside: number): number =>
  (outside - pressures[index]!) * rates[index]!;

/** W that slowing blood gives off. */
const slowing = (state: Float64Array, rates: Float64Array, index: number, inertance: number): number =>
  -inertance * state[index]! * rates[index]!;

/** W that a flow loses from one compartment to the next. */
const across = (
  pressures: Float64Array,
  flows: Float64Array,
  flow: number,
  from: number,
  to: number,
): number => flows[flow]! * (pressures[from]! - pressures[to]!);

const path = ({ a, b }: Path, flow: number): number => (a + b * Math.abs(flow)) * flow * flow;

const square = (value: number): number => value * value;

/** @param returns whether the watched cycle ended where it began */
export function energyBudget(powers: Powers, steps: number, returns: boolean): EnergyBudget {
  if (returns) powers.sources[STORED] = 0;
  const named = (names: readonly string[], sums: Float64Array) =>
    Object.fromEntries(
      names.map((name, i) => [name, sums[i]! / steps] as const).filter(([, power]) => power !== 0),
    );
  const total = (sums: Float64Array) => sums.reduce((sum, value) => sum + value, 0) / steps;
  return {
    sources: named(SOURCES, powers.sources),
    losses: named(LOSSES, powers.losses),
    in: total(powers.sources),
    lost: total(powers.losses),
  };
}
