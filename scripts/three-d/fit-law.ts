/** The whole law from some of the cases, and what it says of any. */
import type { LossConstants } from "../../src/sim/hydraulics/loss-law/constants.ts";
import {
  type Crossing,
  crossable,
  partsAt,
  positionOf,
  usualPosition,
} from "../../src/sim/hydraulics/loss-law/crossing.ts";
import { clearance, featuresOf, jetStrength } from "../../src/sim/hydraulics/loss-law/features.ts";
import {
  type Estimate,
  processOf,
  type Samples,
  type Spread,
} from "../../src/sim/hydraulics/loss-law/gaussian-process.ts";
import { PARTING } from "../../src/sim/hydraulics/loss-law/parting.ts";
import type { PathwayStage } from "../../src/sim/parameters/request.ts";
import { baseOf, fitConstants } from "./fit-constants.ts";
import { fitSpread } from "./fit-process.ts";
import type { SetCase } from "./fit-set.ts";
import { leastSquares } from "./least-squares.ts";
import { nearOf, unsettledOf } from "./unsettled.ts";

export const QUANTITIES = ["power", "drop", "share"] as const;
export type Quantity = (typeof QUANTITIES)[number];
/** In a chamber the streams mix before they part, so that its rule has numbers of its own. */
interface Crossings {
  readonly tubes: Crossing;
  readonly chamber: Crossing;
}

export interface Law {
  readonly constants: LossConstants;
  readonly crossing: Crossings;
  readonly unsettled: number;
  readonly points: readonly (readonly number[])[];
  readonly stages: readonly PathwayStage[];
  readonly samples: Readonly<Record<Quantity, Samples>>;
  readonly spreads: Readonly<Record<Quantity, Spread>>;
}

const isChamber = ({ request }: SetCase): boolean => request.stage === "atriopulmonary";

const pointOf = ({ sizes, streams, fluid }: SetCase): number[] => featuresOf(sizes, streams, fluid);

/** Of the blood that reaches the lungs, what a fenestration takes left out. */
export function leftParts({ stored }: SetCase) {
  const part = ({ left, right }: { left: number; right: number }) => left / (left + right);
  return { ivc: part(stored.shares.ivc), svc: part(stored.shares.svc) };
}

const usual = (each: SetCase, crossing: Crossings): number =>
  usualPosition(
    clearance(each.sizes, 0),
    jetStrength(each.sizes, each.streams),
    each.streams,
    crossing[isChamber(each) ? "chamber" : "tubes"],
  );

type Expected = { readonly [Name in keyof Crossing]: readonly [value: number, stray: number] };
const EXPECTED: { readonly [Name in keyof Crossings]: Expected } = {
  tubes: {
    place: [PARTING.place, 0.15],
    byJet: [PARTING.byJet, 0.2],
    width: [PARTING.width, 0.2],
    most: [0.9, 0.15],
    excess: [1, 0.8],
    jet: [2, 1],
    jetReach: [1, 0.5],
  },
  // no case has a narrowing below its chamber
  chamber: {
    place: [-0.2, 0.4],
    byJet: [0, 1e-3],
    width: [1.2, 0.5],
    most: [1, 0.15],
    excess: [0, 0.5],
    jet: [3, 1e-3],
    jetReach: [1, 1e-3],
  },
};
/** Part of a vein's blood that counts as one stray of the numbers; and beyond which a miss counts in proportion. */
const STRAY_AS = 0.012;
const WILD = 0.15;

function fitRule(cases: readonly SetCase[], expected: Expected, near: Crossing | undefined): Crossing {
  const names = Object.keys(expected) as (keyof Crossing)[];
  const ruleOf = (x: readonly number[]) =>
    Object.fromEntries(names.map((name, i) => [name, x[i]!])) as unknown as Crossing;
  const misses = (x: readonly number[]) => {
    const rule = ruleOf(x);
    const ofCases = cases.map((each) => {
      const away =
        (positionOf(leftParts(each), each.streams) - usual(each, { tubes: rule, chamber: rule })) *
        crossable(each.streams);
      return Math.sign(away) * WILD * Math.sqrt(2 * (Math.sqrt(1 + (away / WILD) ** 2) - 1));
    });
    return [
      ...ofCases,
      ...names.map((name, i) => (STRAY_AS * (x[i]! - expected[name][0])) / expected[name][1]),
    ];
  };
  const begin = names.map((name) => near?.[name] ?? expected[name][0]);
  const scale = names.map((name) => expected[name][1]);
  return ruleOf(leastSquares(misses, begin, scale, near ? 12 : 60));
}

/** No share is read better than this. */
const READ = 0.015;

/** Deviation of a case's crossing share by what its runs show. A chamber's is its run's own: only the narrowest one turned from grid to grid. */
const shareError = ({ stored, streams }: SetCase): number =>
  Math.hypot(READ, stored.shares.ivc.scatter, stored.shares.ivc.starts ?? 0) / crossable(streams);

/** @param near a law of nearly the same cases, to start from */
export function fitLaw(cases: readonly SetCase[], near?: Law): Law {
  const constants = fitConstants(cases, near?.constants);
  const points = cases.map(pointOf);
  const rule = (kind: keyof Crossings) =>
    fitRule(
      cases.filter((each) => isChamber(each) === (kind === "chamber")),
      EXPECTED[kind],
      near?.crossing[kind],
    );
  const crossing = { tubes: rule("tubes"), chamber: rule("chamber") };
  const unsettled = unsettledOf(cases);
  const bases = cases.map((each) => baseOf(each, constants));
  const part = ({ value, uncertainty }: { value: number; uncertainty: number }) => uncertainty / value;
  const samples: Record<Quantity, Samples> = {
    power: {
      points,
      values: cases.map((each, i) => Math.log(each.power / bases[i]!.power)),
      errors: cases.map(({ stored }) => part(stored.power)),
    },
    drop: {
      points,
      values: cases.map((each, i) => Math.log(each.drop / bases[i]!.drop)),
      errors: cases.map(({ stored }) => part(stored.drop)),
    },
    share: {
      points,
      values: cases.map((each) => positionOf(leftParts(each), each.streams) - usual(each, crossing)),
      errors: cases.map((each) => Math.hypot(shareError(each), unsettled * nearOf(each))),
    },
  };
  const spreads = Object.fromEntries(
    QUANTITIES.map((name) => [name, fitSpread(samples[name], near?.spreads[name])]),
  ) as unknown as Record<Quantity, Spread>;
  return {
    constants,
    crossing,
    unsettled,
    points,
    stages: cases.map(({ stored }) => stored.stage),
    samples,
    spreads,
  };
}

export interface Said {
  /** the relations alone, W and Pa, and the crossing position by its rule */
  readonly base: { readonly power: number; readonly drop: number; readonly share: number };
  readonly power: Estimate;
  readonly drop: Estimate;
  readonly share: Estimate;
  /** parts of each vein's blood to the left lung */
  readonly left: { readonly ivc: number; readonly svc: number };
}

export function speakerOf(law: Law): (each: SetCase) => Said {
  const processes = Object.fromEntries(
    QUANTITIES.map((name) => [name, processOf(law.samples[name], law.spreads[name])]),
  ) as unknown as Record<Quantity, ReturnType<typeof processOf>>;
  return (each) => {
    const point = pointOf(each);
    const { mean, deviation } = processes.share.estimate(point);
    const share = { mean, deviation: Math.hypot(deviation, law.unsettled * nearOf(each)) };
    const position = usual(each, law.crossing);
    return {
      base: { ...baseOf(each, law.constants), share: position },
      power: processes.power.estimate(point),
      drop: processes.drop.estimate(point),
      share,
      left: partsAt(position + share.mean, each.streams),
    };
  };
}
