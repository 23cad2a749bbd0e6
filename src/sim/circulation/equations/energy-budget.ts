/**
 * The energy budget. Put in: what active walls and outside pressures do on the volumes, as -p dV/dt. Lost: each element's own law.
 * The two sides share no arithmetic, so that their difference tests the run.
 */

import type { Path } from "../network/circuit-network.ts";
import type { Scratch } from "../network/compartments.ts";
import * as at from "../network/compartments.ts";
import { CLOSING } from "./equations.ts";
import type { ClosedLoop } from "./forcing.ts";
import { LEGS_IN_BELLY } from "./pressures.ts";

/** Power put into the blood and lost from it, by name. */
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
  "venoVenous",
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

type Sums<Name extends string> = { [At in Name]: number };
type Sources = Sums<(typeof SOURCES)[number]>;
type Losses = Sums<(typeof LOSSES)[number]>;

const zeros = <Name extends string>(names: readonly Name[]): Sums<Name> =>
  Object.fromEntries(names.map((name) => [name, 0])) as Sums<Name>;

// Own copies, as in equations.ts: what follows runs once a step.
const {
  AORTA,
  AORTA_FLOW,
  ARTERIES,
  ATRIUM,
  COLLATERAL_LEFT,
  COLLATERAL_RIGHT,
  CORONARY,
  FENESTRATION,
  ATRIOVENTRICULAR_VALVE,
  IVC,
  IVC_COLLAPSE,
  IVC_FLOW,
  JUNCTION,
  LEFT_FLOW,
  LEG_BED,
  LEG_VEINS,
  LEGS,
  LIVER,
  LUNG_BED_LEFT,
  LUNG_BED_RIGHT,
  LUNG_LEFT,
  LUNG_RIGHT,
  PULMONARY_VEINS,
  PULMONARY_VEINS_OUT,
  SEMILUNAR_VALVE,
  RIGHT_ATRIUM,
  RIGHT_FLOW,
  RIGHT_ATRIOVENTRICULAR_VALVE,
  RIGHT_SEMILUNAR_VALVE,
  RIGHT_VENTRICLE,
  SPLANCHNIC,
  SPLANCHNIC_BED,
  SVC_FLOW,
  UPPER,
  UPPER_BED,
  UPPER_COLLAPSE,
  VENO_VENOUS,
  VENTRICLE,
} = at;

const IVC_ENDS = { junction: JUNCTION, atrium: ATRIUM, rightAtrium: RIGHT_ATRIUM } as const;

/** Counts one step: its state, and what its evaluation left behind. */
type AddStep = (step: number, state: at.State, left: Scratch) => void;

/** Running sums of the powers of a cycle. */
export interface Powers {
  readonly add: AddStep;
  /** sums over the steps, W */
  readonly sources: Sources;
  readonly losses: Losses;
}

/** Sums of a cycle, empty at first. */
export function watchPowers(loop: ClosedLoop): Powers {
  const sources = zeros(SOURCES);
  const losses = zeros(LOSSES);
  const addSources = sourcesInto(sources, loop);
  const addLosses = lossesInto(losses, loop);
  return {
    sources,
    losses,
    add(step, state, left) {
      addSources(step, state, left);
      addLosses(step, state, left);
    },
  };
}

function sourcesInto(sources: Sources, { network, forcing }: ClosedLoop): AddStep {
  const { rightHeart } = network.connections;
  const { aortaInertance, legColumn } = network;
  const { svc, ivc, left, right } = network.branches;
  const contracting = network.junctionContracted > 0;
  return (step, state, { pressures: p, rates }) => {
    const intrathoracic = forcing.intrathoracic[2 * step] ?? 0;
    const abdominal = forcing.abdominal[2 * step] ?? 0;
    const muscle = forcing.muscle[2 * step] ?? 0;
    sources.ventricle += released(p, rates, VENTRICLE, intrathoracic);
    sources.atrium += released(p, rates, ATRIUM, intrathoracic);
    if (rightHeart) {
      sources.rightVentricle += released(p, rates, RIGHT_VENTRICLE, intrathoracic);
      sources.rightAtrium += released(p, rates, RIGHT_ATRIUM, intrathoracic);
    }
    const inThorax =
      rates[VENTRICLE] +
      rates[ATRIUM] +
      rates[AORTA] +
      rates[JUNCTION] +
      rates[LUNG_LEFT] +
      rates[LUNG_RIGHT] +
      rates[PULMONARY_VEINS] +
      rates[RIGHT_ATRIUM] +
      rates[RIGHT_VENTRICLE];
    sources.breathing -=
      intrathoracic * inThorax + abdominal * (rates[SPLANCHNIC] + rates[IVC] + LEGS_IN_BELLY * rates[LEGS]);
    sources.muscle -= muscle * rates[LEGS];
    const junction = released(p, rates, JUNCTION, intrathoracic);
    if (contracting) sources.rightAtrium += junction;
    sources.stored +=
      released(p, rates, AORTA, intrathoracic) +
      (contracting ? 0 : junction) +
      released(p, rates, LUNG_LEFT, intrathoracic) +
      released(p, rates, LUNG_RIGHT, intrathoracic) +
      released(p, rates, PULMONARY_VEINS, intrathoracic) +
      released(p, rates, SPLANCHNIC, abdominal) +
      released(p, rates, IVC, abdominal) +
      released(p, rates, LEGS, muscle + LEGS_IN_BELLY * abdominal + legColumn) +
      released(p, rates, ARTERIES, 0) +
      released(p, rates, UPPER, 0) +
      slowing(state, rates, AORTA_FLOW, aortaInertance) +
      slowing(state, rates, SVC_FLOW, svc.inertance) +
      slowing(state, rates, IVC_FLOW, ivc.inertance) +
      slowing(state, rates, LEFT_FLOW, left.inertance) +
      slowing(state, rates, RIGHT_FLOW, right.inertance);
  };
}

function lossesInto(losses: Losses, { network, forcing }: ClosedLoop): AddStep {
  const coronaryEnd = network.connections.rightHeart ? RIGHT_ATRIUM : ATRIUM;
  const { aortaResistance, legColumn } = network;
  const { svc, ivc, left, right } = network.branches;
  const ivcInto = IVC_ENDS[network.connections.ivcInto];
  return (step, state, { pressures: p, flows: q, collapse }) => {
    const abdominal = forcing.abdominal[2 * step] ?? 0;
    losses.atrioventricularValve += across(p, q, ATRIOVENTRICULAR_VALVE, ATRIUM, VENTRICLE);
    losses.semilunarValve += across(p, q, SEMILUNAR_VALVE, VENTRICLE, AORTA);
    losses.aorta += aortaResistance * square(state[AORTA_FLOW]);
    losses.upperBed += across(p, q, UPPER_BED, ARTERIES, UPPER);
    losses.splanchnicBed += across(p, q, SPLANCHNIC_BED, ARTERIES, SPLANCHNIC);
    losses.legBed += across(p, q, LEG_BED, ARTERIES, LEGS) + legColumn * q[LEG_BED];
    losses.coronary += across(p, q, CORONARY, ARTERIES, coronaryEnd);
    losses.collaterals +=
      across(p, q, COLLATERAL_LEFT, ARTERIES, LUNG_LEFT) +
      across(p, q, COLLATERAL_RIGHT, ARTERIES, LUNG_RIGHT);
    losses.hepatic += across(p, q, LIVER, SPLANCHNIC, IVC);
    losses.legVeins += across(p, q, LEG_VEINS, LEGS, IVC) - legColumn * q[LEG_VEINS];
    losses.venoVenous += across(p, q, VENO_VENOUS, UPPER, ATRIUM);
    losses.collapsingVeins +=
      svc.a * (collapse[UPPER_COLLAPSE] - 1) * square(state[SVC_FLOW]) +
      ivc.a * (collapse[IVC_COLLAPSE] - 1) * square(state[IVC_FLOW]) +
      Math.max(0, abdominal + CLOSING - p[ivcInto]) * state[IVC_FLOW];
    losses.pathwayIvc += path(ivc, state[IVC_FLOW]);
    losses.pathwaySvc += path(svc, state[SVC_FLOW]);
    losses.pathwayLeft += path(left, state[LEFT_FLOW]);
    losses.pathwayRight += path(right, state[RIGHT_FLOW]);
    losses.fenestration += across(p, q, FENESTRATION, JUNCTION, ATRIUM);
    losses.lungLeft += across(p, q, LUNG_BED_LEFT, LUNG_LEFT, PULMONARY_VEINS);
    losses.lungRight += across(p, q, LUNG_BED_RIGHT, LUNG_RIGHT, PULMONARY_VEINS);
    losses.pulmonaryVeins += across(p, q, PULMONARY_VEINS_OUT, PULMONARY_VEINS, ATRIUM);
    losses.rightAtrioventricularValve += across(
      p,
      q,
      RIGHT_ATRIOVENTRICULAR_VALVE,
      RIGHT_ATRIUM,
      RIGHT_VENTRICLE,
    );
    losses.rightSemilunarValve += across(p, q, RIGHT_SEMILUNAR_VALVE, RIGHT_VENTRICLE, JUNCTION);
  };
}

// Not within the steps' functions: a closure created in each step costs more than what it computes.
/** W that a wall gives off, against what stands outside it. */
const released = (
  pressures: at.ByCompartment,
  rates: at.State,
  index: at.Compartment,
  outside: number,
): number => (outside - pressures[index]) * rates[index];

/** W that slowing blood gives off. */
const slowing = (state: at.State, rates: at.State, index: at.InertFlow, inertance: number): number =>
  -inertance * state[index] * rates[index];

/** W that a flow loses from one compartment to the next. */
const across = (
  pressures: at.ByCompartment,
  flows: at.Flows,
  flow: at.Flow,
  from: at.Compartment,
  to: at.Compartment,
): number => flows[flow] * (pressures[from] - pressures[to]);

const path = ({ a, b }: Path, flow: number): number => (a + b * Math.abs(flow)) * flow * flow;

const square = (value: number): number => value * value;

/**
 * Means (W) of what was summed over a number of `steps`.
 * @param returns whether the watched cycle ended where it began: what was stored then comes to nothing, and is left out of the budget
 */
export function energyBudget(powers: Powers, steps: number, returns: boolean): EnergyBudget {
  if (returns) powers.sources.stored = 0;
  const named = (sums: Readonly<Record<string, number>>) =>
    Object.fromEntries(
      Object.entries(sums)
        .map(([name, sum]) => [name, sum / steps] as const)
        .filter(([, power]) => power !== 0),
    );
  const total = (sums: Readonly<Record<string, number>>) =>
    Object.values(sums).reduce((sum, value) => sum + value, 0) / steps;
  return {
    sources: named(powers.sources),
    losses: named(powers.losses),
    in: total(powers.sources),
    lost: total(powers.losses),
  };
}
