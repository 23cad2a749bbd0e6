/** The whole law from some of the cases, and what it says of any. */
import { nelderMead } from "fmin";
import type { LossConstants } from "../../src/sim/hydraulics/loss-law/constants.ts";
import { partsAt, positionOf, usualPosition } from "../../src/sim/hydraulics/loss-law/crossing.ts";
import { featuresOf } from "../../src/sim/hydraulics/loss-law/features.ts";
import { type Estimate, processOf, type Samples, type Spread } from "../../src/sim/hydraulics/loss-law/gaussian-process.ts";
import { baseOf, fitConstants } from "./fit-constants.ts";
import { fitSpread } from "./fit-process.ts";
import type { SetCase } from "./fit-set.ts";

export const QUANTITIES = ["power", "drop", "share"] as const;
export type Quantity = (typeof QUANTITIES)[number];
export interface Crossing {
  readonly tubes: number;
  readonly chamber: number;
}

export interface Law {
  readonly constants: LossConstants;
  readonly crossing: Crossing;
  readonly points: readonly (readonly number[])[];
  readonly samples: Readonly<Record<Quantity, Samples>>;
  readonly spreads: Readonly<Record<Quantity, Spread>>;
}

const isChamber = ({ request }: SetCase): boolean => request.stage === "atriopulmonary";

export const pointOf = (each: SetCase, { headOnPlace }: LossConstants): number[] =>
  featuresOf(each.sizes, each.streams, each.fluid, headOnPlace);

/** Of the blood that reaches the lungs, what a fenestration takes left out. */
export function leftParts({ stored }: SetCase) {
  const part = ({ left, right }: { left: number; right: number }) => left / (left + right);
  return { ivc: part(stored.shares.ivc), svc: part(stored.shares.svc) };
}

const usual = (each: SetCase, point: readonly number[], crossing: Crossing): number =>
  usualPosition(point[0]!, isChamber(each), crossing);

function fitCrossing(cases: readonly SetCase[], points: readonly (readonly number[])[]): Crossing {
  const crossingOf = ([tubes, chamber]: readonly number[]): Crossing => ({ tubes: tubes!, chamber: chamber! });
  const miss = (x: readonly number[]) =>
    cases.reduce((sum, each, i) => {
      const away = positionOf(leftParts(each), each.streams) - usual(each, points[i]!, crossingOf(x));
      return sum + away * away;
    }, 0);
  return crossingOf(nelderMead(miss, [2, 1], { maxIterations: 200 }).x);
}

/** @param near a law of nearly the same cases, to start from */
export function fitLaw(cases: readonly SetCase[], near?: Law): Law {
  const constants = fitConstants(cases, near?.constants);
  const points = cases.map((each) => pointOf(each, constants));
  const crossing = fitCrossing(cases, points);
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
      values: cases.map(
        (each, i) => positionOf(leftParts(each), each.streams) - usual(each, points[i]!, crossing),
      ),
      errors: cases.map(({ stored }) => stored.shares.ivc.uncertainty),
    },
  };
  const spreads = Object.fromEntries(
    QUANTITIES.map((name) => [name, fitSpread(samples[name], near?.spreads[name])]),
  ) as unknown as Record<Quantity, Spread>;
  return { constants, crossing, points, samples, spreads };
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
    const point = pointOf(each, law.constants);
    const share = processes.share.estimate(point);
    const position = usual(each, point, law.crossing);
    return {
      base: { ...baseOf(each, law.constants), share: position },
      power: processes.power.estimate(point),
      drop: processes.drop.estimate(point),
      share,
      left: partsAt(position + share.mean, each.streams),
    };
  };
}
