/** Cases where the law stood on few: uneven outlets away from the centre, head-on streams, jets, adults, more of the spread. The most telling first. */
import { adult, type Case, type Change, everything, flows, LEAK, one, sizes } from "./case.ts";

const EC = "extracardiac";
const LT = "lateral-tunnel";
const AP = "atriopulmonary";

/** Coarser than the first cases, so that more of them fit; the grid's error counts in each one's uncertainty. */
const TUBES = 28;
const CHAMBER = 25;

/** Two things at once. */
const pair = (stage: typeof EC | typeof LT, tag: string, change: Change) => one(stage, "pair", tag, change);
const at = (cavalOffset: number, change: Change = {}): Change => ({
  ...change,
  set: { cavalOffset, ...change.set },
});

const tubes = (): Case[] => [
  ...everything(LT, 11, 20),
  ...everything(EC, 15, 22),
  ...flows(LT, "left", [0.4, 0.6, 0.7]),
  ...flows(EC, "left", [0.4]),
  pair(EC, "headon-left-0.3", at(0, { left: 0.3 })),
  pair(EC, "headon-left-0.7", at(0, { left: 0.7 })),
  pair(EC, "away-left-0.3", at(-7, { left: 0.3 })),
  pair(EC, "away-left-0.7", at(-7, { left: 0.7 })),
  pair(LT, "away-left-0.3", at(7, { left: 0.3 })),
  pair(LT, "away-left-0.7", at(-5, { left: 0.7 })),
  ...flows(EC, "lower", [0.48, 0.63]),
  ...flows(LT, "lower", [0.4, 0.48]),
  ...sizes(EC, "offset", "cavalOffset", [-1.5]),
  ...sizes(LT, "offset", "cavalOffset", [-2, 1.5]),
  pair(EC, "headon-narrowing-40", at(0, { set: { pathwayNarrowing: 40 } })),
  pair(EC, "away-narrowing-40", at(-7, { set: { pathwayNarrowing: 40 } })),
  pair(LT, "away-narrowing-40", at(7, { set: { pathwayNarrowing: 40 } })),
  pair(EC, "narrowing-40-left-0.65", at(4, { left: 0.65, set: { pathwayNarrowing: 40 } })),
  one(EC, "adult", "left-0.3", { body: adult, left: 0.3 }),
  one(EC, "adult", "left-0.65", { body: adult, left: 0.65 }),
  one(EC, "adult", "away", { body: adult, ...at(-10) }),
  one(EC, "adult", "lower-0.7", { body: adult, lower: 0.7 }),
  one(LT, "adult", "index-5", { body: adult, index: 5 }),
  one(LT, "adult", "away", { body: adult, ...at(-8) }),
  one(EC, "fenestration", "headon", { ...LEAK, set: { ...LEAK.set, cavalOffset: 0 } }),
  one(LT, "fenestration", "index-6", { ...LEAK, index: 6 }),
];

const chambers = (): Case[] => [
  ...everything(AP, 8, 11),
  ...flows(AP, "left", [0.4, 0.6, 0.7]),
  ...flows(AP, "lower", [0.45]),
  one(AP, "adult", "index-5", { body: adult, index: 5, set: { chamberDiameter: 56 } }),
  one(AP, "fenestration", "index-6", { ...LEAK, index: 6 }),
];

export const fillingCases = (): Case[] => [
  ...tubes().map((each) => ({ ...each, across: TUBES })),
  ...chambers().map((each) => ({ ...each, across: CHAMBER })),
];
