/** The whole law from some of the cases, and what it says of any. */
import { nelderMead } from "fmin/index.js";
import type { LossConstants } from "../../src/sim/hydraulics/loss-law/constants.ts";
import {
  type Crossing,
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
import { baseOf, fitConstants } from "./fit-constants.ts";
import { fitSpread } from "./fit-process.ts";
import type { SetCase } from "./fit-set.ts";

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
  readonly points: readonly (readonly number[])[];
  readonly samples: Readonly<Record<Quantity, Samples>>;
  readonly spreads: Readonly<Record<Quantity, Spread>>;
}

const isChamber = ({ request }: SetCase): boolean => request.stage === "atriopulmonary";

const pointOf = (each: SetCase, { headOnPlace }: LossConstants): number[] =>
  featuresOf(each.sizes, each.streams, each.fluid, headOnPlace);

/** Of the blood that reaches the lungs, what a fenestration takes left out. */
export function leftParts({ stored }: SetCase) {
  const part = ({ left, right }: { left: number; right: number }) => left / (left + right);
  return { ivc: part(stored.shares.ivc), svc: part(stored.shares.svc) };
}

const usual = (each: SetCase, crossing: Crossings, { headOnPlace }: LossConstants): number =>
  usualPosition(
    clearance(each.sizes, headOnPlace),
    jetStrength(each.sizes, each.streams),
    each.streams,
    crossing[isChamber(each) ? "chamber" : "tubes"],
  );

const RULE: Crossing = { width: 0.5, shift: -0.2, lower: 1, left: -1, jet: 1.7 };
const RULE_NAMES = Object.keys(RULE) as (keyof Crossing)[];

function fitRule(cases: readonly SetCase[], constants: LossConstants, near: Crossing): Crossing {
  const ruleOf = (x: readonly number[]) =>
    Object.fromEntries(RULE_NAMES.map((name, i) => [name, x[i]!])) as unknown as Crossing;
  const miss = (x: readonly number[]) => {
    const rule = ruleOf(x);
    return cases.reduce((sum, each) => {
      const away =
        positionOf(leftParts(each), each.streams) - usual(each, { tubes: rule, chamber: rule }, constants);
      return sum + away * away;
    }, 0);
  };
  return ruleOf(
    nelderMead(
      miss,
      RULE_NAMES.map((name) => near[name]),
      { maxIterations: 600 },
    ).x,
  );
}

/** @param near a law of nearly the same cases, to start from */
export function fitLaw(cases: readonly SetCase[], near?: Law): Law {
  const constants = fitConstants(cases, near?.constants);
  const points = cases.map((each) => pointOf(each, constants));
  const rule = (chamber: boolean) =>
    fitRule(
      cases.filter((each) => isChamber(each) === chamber),
      constants,
      near?.crossing[chamber ? "chamber" : "tubes"] ?? RULE,
    );
  const crossing = { tubes: rule(false), chamber: rule(true) };
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
        (each) => positionOf(leftParts(each), each.streams) - usual(each, crossing, constants),
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
    const position = usual(each, law.crossing, law.constants);
    return {
      base: { ...baseOf(each, law.constants), share: position },
      power: processes.power.estimate(point),
      drop: processes.drop.estimate(point),
      share,
      left: partsAt(position + share.mean, each.streams),
    };
  };
}
