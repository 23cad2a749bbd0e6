/**
 * The energy book. Put in: what active walls and outside pressures do on the volumes, as -p dV/dt. Lost: each element's own law.
 * The two sides share no arithmetic, so that their difference tests the run.
 */
import * as at from "./compartments.ts";
import type { Drive } from "./drive.ts";
import type { Scratch } from "./equations.ts";
import type { Network, Path } from "./network.ts";

export interface EnergyBook {
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
  "inletValve",
  "outletValve",
  "aorta",
  "upperBed",
  "splanchnicBed",
  "legBed",
  "coronary",
  "collaterals",
  "liver",
  "legVeins",
  "collapsingVeins",
  "pathwayIvc",
  "pathwaySvc",
  "pathwayLeft",
  "pathwayRight",
  "fenestration",
  "lungLeft",
  "lungRight",
  "lungVeins",
  "rightInletValve",
  "rightOutletValve",
] as const;

/** What stretched vessels and moving blood give back; over a repeat that returns it is nothing, and is left out of the book. */
const STORED = SOURCES.indexOf("stored");

/** Compartments inside the chest. */
const IN_CHEST = [
  at.VENTRICLE,
  at.ATRIUM,
  at.AORTA,
  at.JUNCTION,
  at.LUNG_LEFT,
  at.LUNG_RIGHT,
  at.LUNG_VEINS,
  at.RIGHT_ATRIUM,
  at.RIGHT_VENTRICLE,
];

export interface Powers {
  add(
    network: Network,
    drive: Drive,
    step: number,
    state: Float64Array,
    rates: Float64Array,
    scratch: Scratch,
  ): void;
  /** sums over the steps, W */
  readonly sources: Float64Array;
  readonly losses: Float64Array;
}

export function watchPowers(): Powers {
  const sources = new Float64Array(SOURCES.length);
  const losses = new Float64Array(LOSSES.length);
  return {
    sources,
    losses,
    add(network, drive, step, state, rates, { pressures, flows, collapse }) {
      const half = 2 * step;
      const chest = drive.chest[half]!;
      const wall = (index: number) => -(pressures[index]! - chest) * rates[index]!;
      sources[0] = sources[0]! + wall(at.VENTRICLE);
      sources[1] = sources[1]! + wall(at.ATRIUM);
      if (network.connections.rightHeart) {
        sources[2] = sources[2]! + wall(at.RIGHT_VENTRICLE);
        sources[3] = sources[3]! + wall(at.RIGHT_ATRIUM);
      }
      let inChest = 0;
      for (const index of IN_CHEST) inChest += rates[index]!;
      sources[4] =
        sources[4]! - chest * inChest - drive.belly[half]! * (rates[at.SPLANCHNIC]! + rates[at.IVC]!);
      sources[5] = sources[5]! - drive.muscle[half]! * rates[at.LEGS]!;

      const { svc, ivc, left, right } = network.branches;
      sources[STORED] = sources[STORED]! + released(network, drive, half, state, rates, pressures);
      const across = (flow: number, from: number, to: number) =>
        flows[flow]! * (pressures[from]! - pressures[to]!);
      const path = ({ a, b }: Path, flow: number) => (a + b * Math.abs(flow)) * flow * flow;
      const aortaFlow = state[at.AORTA_FLOW]!;
      const svcFlow = state[at.SVC_FLOW]!;
      const ivcFlow = state[at.IVC_FLOW]!;
      const spent = [
        across(0, at.ATRIUM, at.VENTRICLE),
        across(1, at.VENTRICLE, at.AORTA),
        network.aortaResistance * aortaFlow * aortaFlow,
        across(2, at.ARTERIES, at.UPPER),
        across(3, at.ARTERIES, at.SPLANCHNIC),
        across(4, at.ARTERIES, at.LEGS),
        across(5, at.ARTERIES, network.connections.rightHeart ? at.RIGHT_ATRIUM : at.ATRIUM),
        across(6, at.ARTERIES, at.LUNG_LEFT) + across(7, at.ARTERIES, at.LUNG_RIGHT),
        across(8, at.SPLANCHNIC, at.IVC),
        across(9, at.LEGS, at.IVC),
        svc.a * (collapse[0]! - 1) * svcFlow * svcFlow + ivc.a * (collapse[3]! - 1) * ivcFlow * ivcFlow,
        path(ivc, ivcFlow),
        path(svc, svcFlow),
        path(left, state[at.LEFT_FLOW]!),
        path(right, state[at.RIGHT_FLOW]!),
        across(10, at.JUNCTION, at.ATRIUM),
        across(11, at.LUNG_LEFT, at.LUNG_VEINS),
        across(12, at.LUNG_RIGHT, at.LUNG_VEINS),
        across(13, at.LUNG_VEINS, at.ATRIUM),
        across(14, at.RIGHT_ATRIUM, at.RIGHT_VENTRICLE),
        across(15, at.RIGHT_VENTRICLE, at.JUNCTION),
      ];
      for (let i = 0; i < spent.length; i++) losses[i] = losses[i]! + spent[i]!;
    },
  };
}

/** W released by passive walls and by slowing blood. */
function released(
  network: Network,
  drive: Drive,
  half: number,
  state: Float64Array,
  rates: Float64Array,
  pressures: Float64Array,
): number {
  let power = 0;
  for (let i = 0; i < at.VOLUMES; i++) {
    if (network.compliance[i] === 0) continue;
    const outside = IN_CHEST.includes(i)
      ? drive.chest[half]!
      : i === at.SPLANCHNIC || i === at.IVC
        ? drive.belly[half]!
        : i === at.LEGS
          ? drive.muscle[half]!
          : 0;
    power -= (pressures[i]! - outside) * rates[i]!;
  }
  const { svc, ivc, left, right } = network.branches;
  const slowing = (index: number, inertance: number) => {
    power -= inertance * state[index]! * rates[index]!;
  };
  slowing(at.AORTA_FLOW, network.aortaInertance);
  slowing(at.SVC_FLOW, svc.inertance);
  slowing(at.IVC_FLOW, ivc.inertance);
  slowing(at.LEFT_FLOW, left.inertance);
  slowing(at.RIGHT_FLOW, right.inertance);
  return power;
}

/** @param returns whether the watched repeat ended where it began */
export function energyBook(powers: Powers, steps: number, returns: boolean): EnergyBook {
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
