/** A case, and how one is made from the centre of its pathway. */
import { type Body, bodyAt, CASES, type PathwayStage } from "../../src/sim/parameters/request.ts";
import { spread } from "./spread.ts";

export interface Case {
  readonly name: string;
  readonly family: string;
  readonly stage: PathwayStage;
  readonly body: Body;
  readonly set: Readonly<Record<string, number>>;
  /** L/min/m2 through both veins */
  readonly index: number;
  /** parts of the veins' blood from below, and of the lungs' blood to the left */
  readonly lower: number;
  readonly left: number;
  /** part of the veins' blood through the fenestration */
  readonly leak: number;
  readonly inflow: "parabola" | "flat";
  /** fraction by which all flows oscillate, and the period (s) */
  readonly pulse?: { readonly part: number; readonly period: number };
  /** the vein that comes in before the other, in a repeat from another start */
  readonly first?: "lower" | "upper";
  /** cells across the narrower pulmonary artery */
  readonly across: number;
}

export type Change = Partial<Omit<Case, "name" | "family" | "stage">>;

/** Cells across a pulmonary artery, unless a case has its own number. */
const ACROSS = { extracardiac: 34, "lateral-tunnel": 34, atriopulmonary: 29 } as const;

const CENTRE = {
  body: CASES.caseA,
  index: 3.5,
  lower: 0.55,
  left: 0.45,
  leak: 0,
  inflow: "parabola",
} as const;

const SHORT = { extracardiac: "ec", "lateral-tunnel": "lt", atriopulmonary: "ap" } as const;
const MIDDLE: Readonly<Record<PathwayStage, Readonly<Record<string, number>>>> = {
  extracardiac: { cavalOffset: 4 },
  "lateral-tunnel": { cavalOffset: 0 },
  atriopulmonary: { cavalOffset: 0 },
};

export function one(stage: PathwayStage, family: string, tag: string, { set, ...change }: Change): Case {
  return {
    ...CENTRE,
    across: ACROSS[stage],
    name: `${SHORT[stage]}-${family}${tag && `-${tag}`}`,
    family,
    stage,
    ...change,
    set: { ...MIDDLE[stage], ...set },
  };
}

/** One case for each value of one settable size. */
export const sizes = (
  stage: PathwayStage,
  family: string,
  name: string,
  values: readonly number[],
  change: Change = {},
) =>
  values.map((value) => one(stage, family, `${value}`, { ...change, set: { ...change.set, [name]: value } }));

/** One case for each value of a flow. */
export const flows = (stage: PathwayStage, family: "index" | "lower" | "left", values: readonly number[]) =>
  values.map((value) => one(stage, family, `${value}`, { [family]: value }));

export const LEAK = { leak: 0.15, set: { fenestrationDiameter: 4 } } as const;
export const BREATH = { part: 0.4, period: 2 } as const;
export const BEAT = { part: 0.3, period: 0.8 } as const;
export const adult = CASES.caseB;

/** Each pathway's own stretch of the spread's points. */
const FIRST = { extracardiac: 1, "lateral-tunnel": 31, atriopulmonary: 61 } as const;

type Range = readonly [low: number, high: number];

/** What a spread covers, and which of its points it takes. */
export interface Covered {
  readonly family: string;
  /** points of the spread to pass over */
  readonly skipped: number;
  readonly age: Range;
  /** offset over about a mean radius of the lumens */
  readonly offset: Range;
  /** mm: conduit or tunnel */
  readonly diameter: Range | undefined;
  readonly index: Range;
}

const WHOLE: Covered = {
  family: "spread",
  skipped: 0,
  age: [5, 19],
  offset: [-1.4, 1.4],
  diameter: undefined,
  index: [2, 7],
};

/** Everything at once, evenly spread over the range for which the law must hold, or a part of it: points `from` to `to` of a pathway. */
export function everything(
  stage: PathwayStage,
  from: number,
  to: number,
  part: Partial<Covered> = {},
): Case[] {
  const covered = { ...WHOLE, ...part };
  const within = ([low, high]: Range, part: number, step: number) =>
    Number((Math.round((low + (high - low) * part) / step) * step).toFixed(3));
  return Array.from({ length: to - from + 1 }, (_, k) => {
    const at = spread(FIRST[stage] + covered.skipped + from - 1 + k, 10);
    const body = bodyAt(within(covered.age, at[0]! < 0.35 ? 0 : at[0]!, 1));
    const wide = body.ageYears / 14;
    // a third of the cases has each narrowing, so that most are open tubes
    const taken = (part: number, most: number) =>
      part < 0.6 ? 0 : within([15, most], (part - 0.6) / 0.4, 5);
    const offset = within(covered.offset, at[1]!, 0.05) * (7 + 1.5 * wide);
    const common = {
      cavalOffset: Math.round(offset * 2) / 2,
      leftBranchStenosis: taken(at[2]!, 50),
      rightBranchStenosis: taken(at[3]!, 50),
    };
    const own: Readonly<Record<PathwayStage, Readonly<Record<string, number>>>> = {
      extracardiac: {
        conduitDiameter: within(covered.diameter ?? [12, 24], at[4]!, 0.5),
        jointFlare: within([0, 8], at[5]!, 0.5),
        pathwayNarrowing: taken(at[6]!, 50),
      },
      "lateral-tunnel": {
        tunnelDiameter: within(covered.diameter ?? [13, 24], at[4]!, 0.5),
        jointFlare: within([0, 8], at[5]!, 0.5),
        pathwayNarrowing: taken(at[6]!, 50),
      },
      atriopulmonary: { chamberDiameter: within([28, 50], at[4]!, 1) },
    };
    return one(stage, covered.family, `${from + k}`, {
      body,
      set: { ...common, ...own[stage] },
      index: within(covered.index, at[7]!, 0.1),
      lower: within([0.42, 0.72], at[8]!, 0.01),
      left: within([0.3, 0.7], at[9]!, 0.01),
    });
  });
}
