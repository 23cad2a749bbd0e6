/** The cases: one-at-a-time families about a centre for each pathway, a spread of everything at once, pairs of grids, a pipe. */
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
  /** cells across the narrower pulmonary artery */
  readonly across: number;
}

type Change = Partial<Omit<Case, "name" | "family" | "stage">>;

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

function one(stage: PathwayStage, family: string, tag: string, { set, ...change }: Change): Case {
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
const sizes = (
  stage: PathwayStage,
  family: string,
  name: string,
  values: readonly number[],
  change: Change = {},
) =>
  values.map((value) => one(stage, family, `${value}`, { ...change, set: { ...change.set, [name]: value } }));

/** One case for each value of a flow. */
const flows = (stage: PathwayStage, family: "index" | "lower" | "left", values: readonly number[]) =>
  values.map((value) => one(stage, family, `${value}`, { [family]: value }));

const LEAK = { leak: 0.15, set: { fenestrationDiameter: 4 } } as const;
const BREATH = { part: 0.4, period: 2 } as const;
const BEAT = { part: 0.3, period: 0.8 } as const;
const adult = CASES.caseB;

const conduit = (): Case[] => {
  const s = "extracardiac";
  return [
    one(s, "centre", "", {}),
    ...sizes(s, "offset", "cavalOffset", [-11, -7, -3.5, 0, 2, 7, 10.5]),
    ...sizes(s, "trunk", "conduitDiameter", [12, 15, 21, 24]),
    ...sizes(s, "headon", "conduitDiameter", [12, 24], { set: { cavalOffset: 0 } }),
    ...sizes(s, "flare", "jointFlare", [0, 6, 9]),
    ...sizes(s, "narrowing", "pathwayNarrowing", [20, 40, 60]),
    ...sizes(s, "leftlung", "leftBranchStenosis", [30, 55]),
    ...sizes(s, "rightlung", "rightBranchStenosis", [30, 55]),
    ...flows(s, "left", [0.3, 0.6, 0.7]),
    ...flows(s, "lower", [0.4, 0.7]),
    ...flows(s, "index", [2, 5, 8]),
    one(s, "adult", "", { body: adult }),
    one(s, "adult", "headon", { body: adult, set: { cavalOffset: 0 } }),
    one(s, "adult", "far", { body: adult, set: { cavalOffset: 14 } }),
    one(s, "adult", "narrow", { body: adult, set: { pathwayNarrowing: 40 } }),
    one(s, "adult", "index-2", { body: adult, index: 2 }),
    one(s, "adult", "index-6", { body: adult, index: 6 }),
    one(s, "fenestration", "", LEAK),
    one(s, "fenestration", "index-6", { ...LEAK, index: 6 }),
    one(s, "flat", "", { inflow: "flat" }),
    one(s, "flat", "headon", { inflow: "flat", set: { cavalOffset: 0 } }),
    one(s, "pulse", "breath", { pulse: BREATH }),
    one(s, "pulse", "beat", { pulse: BEAT }),
  ];
};

const tunnel = (): Case[] => {
  const s = "lateral-tunnel";
  return [
    one(s, "centre", "", {}),
    ...sizes(s, "offset", "cavalOffset", [-10.5, -5, 3.5, 7, 10.5]),
    ...sizes(s, "trunk", "tunnelDiameter", [13, 24]),
    ...sizes(s, "flare", "jointFlare", [0, 8]),
    ...sizes(s, "narrowing", "pathwayNarrowing", [30, 55]),
    ...sizes(s, "leftlung", "leftBranchStenosis", [45]),
    ...flows(s, "left", [0.3, 0.65]),
    ...flows(s, "lower", [0.7]),
    ...flows(s, "index", [2, 6]),
    one(s, "adult", "", { body: adult }),
    one(s, "adult", "far", { body: adult, set: { cavalOffset: 10 } }),
    one(s, "fenestration", "", LEAK),
    one(s, "flat", "", { inflow: "flat" }),
    one(s, "pulse", "breath", { pulse: BREATH }),
  ];
};

const chamber = (): Case[] => {
  const s = "atriopulmonary";
  return [
    one(s, "centre", "", {}),
    ...sizes(s, "offset", "cavalOffset", [-10, 10]),
    ...sizes(s, "trunk", "chamberDiameter", [28, 36, 52]),
    ...sizes(s, "rightlung", "rightBranchStenosis", [40]),
    ...flows(s, "left", [0.3, 0.65]),
    ...flows(s, "lower", [0.7]),
    ...flows(s, "index", [2, 6]),
    one(s, "adult", "", { body: adult, set: { chamberDiameter: 56 } }),
    one(s, "fenestration", "", LEAK),
    one(s, "flat", "", { inflow: "flat" }),
  ];
};

/** Everything at once, evenly spread over the range for which the law must hold. */
function everything(stage: PathwayStage, count: number, first: number): Case[] {
  const within = (low: number, high: number, part: number, step: number) =>
    Number((Math.round((low + (high - low) * part) / step) * step).toFixed(3));
  return Array.from({ length: count }, (_, k) => {
    const at = spread(first + k, 10);
    const body = bodyAt(within(5, 19, at[0]! < 0.35 ? 0 : at[0]!, 1));
    const wide = body.ageYears / 14;
    // a third of the cases has each narrowing, so that most are open tubes
    const taken = (part: number, most: number) => (part < 0.6 ? 0 : within(15, most, (part - 0.6) / 0.4, 5));
    const offset = within(-1.4, 1.4, at[1]!, 0.05) * (7 + 1.5 * wide);
    const common = {
      cavalOffset: Math.round(offset * 2) / 2,
      leftBranchStenosis: taken(at[2]!, 50),
      rightBranchStenosis: taken(at[3]!, 50),
    };
    const own: Readonly<Record<PathwayStage, Readonly<Record<string, number>>>> = {
      extracardiac: {
        conduitDiameter: within(12, 24, at[4]!, 0.5),
        jointFlare: within(0, 8, at[5]!, 0.5),
        pathwayNarrowing: taken(at[6]!, 50),
      },
      "lateral-tunnel": {
        tunnelDiameter: within(13, 24, at[4]!, 0.5),
        jointFlare: within(0, 8, at[5]!, 0.5),
        pathwayNarrowing: taken(at[6]!, 50),
      },
      atriopulmonary: { chamberDiameter: within(28, 50, at[4]!, 1) },
    };
    return one(stage, "spread", `${k + 1}`, {
      body,
      set: { ...common, ...own[stage] },
      index: within(2, 7, at[7]!, 0.1),
      lower: within(0.42, 0.72, at[8]!, 0.01),
      left: within(0.3, 0.7, at[9]!, 0.01),
    });
  });
}

/** The same again on a coarser or finer grid. */
const COARSE = ["ec-offset-10.5", "ec-index-2", "ec-adult-index-2", "lt-offset-7", "ap-trunk-28"];
const FINE = [
  "ec-centre",
  "ec-offset-0",
  "ec-offset-10.5",
  "ec-narrowing-40",
  "ec-adult",
  "lt-offset-7",
  "ap-trunk-28",
];

export function allCases(): Case[] {
  const plain = [
    ...conduit(),
    ...tunnel(),
    ...chamber(),
    ...everything("extracardiac", 14, 1),
    ...everything("lateral-tunnel", 10, 31),
    ...everything("atriopulmonary", 7, 61),
  ];
  const again = (name: string, across: number): Case => {
    const same = plain.find((each) => each.name === name)!;
    return { ...same, name: `${name}-grid-${across}`, family: "grid", across };
  };
  return [...plain, ...COARSE.map((name) => again(name, 27)), ...FINE.map((name) => again(name, 45))];
}
