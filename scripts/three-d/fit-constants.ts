/** The relations' few fitted numbers: least squares of the logarithms of both veins' drops, wild cases weighed less. */
import type { LossConstants } from "../../src/sim/hydraulics/loss-law/constants.ts";
import { branchDrops, lossOf } from "../../src/sim/hydraulics/loss-law/correction.ts";
import { baseLaw } from "../../src/sim/hydraulics/pathway-network.ts";
import type { SetCase } from "./fit-set.ts";
import { leastSquares } from "./least-squares.ts";

/** Where each number is expected, and how far it may stray before that counts as one case's miss. */
const EXPECTED: { readonly [Name in keyof LossConstants]: readonly [value: number, stray: number] } = {
  jointEntry: [1.5, 0.3],
  led: [0, 0.5],
  turn: [0.5, 0.2],
  facing: [1.4, 0.4],
  ownPart: [0.1, 0.2],
  headOnPlace: [-0.07, 0.1],
  clearance: [0.7, 0.2],
  jetLength: [1.8, 0.5],
  spared: [0, 1.5],
  outlet: [0, 3],
  unparted: [0, 0.4],
  jetFacing: [0.4, 0.3],
  jetReach: [1, 0.4],
};
const NAMES = Object.keys(EXPECTED) as (keyof LossConstants)[];

/** Logarithm beyond which a miss counts in proportion, not by its square. */
const WILD = 0.15;

const constantsOf = (x: readonly number[]): LossConstants =>
  Object.fromEntries(NAMES.map((name, i) => [name, x[i]!])) as unknown as LossConstants;

/** What the relations alone say: W and Pa. */
export function baseOf({ request, flows, streams }: SetCase, constants: LossConstants) {
  return lossOf(branchDrops(baseLaw(request, flows, constants), flows), streams);
}

export function fitConstants(cases: readonly SetCase[], start?: LossConstants): LossConstants {
  const misses = (x: readonly number[]) => {
    const constants = constantsOf(x);
    const ofCases = cases.flatMap((each) => {
      const { power, drop } = baseOf(each, constants);
      const { lower, lungs } = each.streams;
      const upper = (one: { power: number; drop: number }) =>
        (one.power / lungs - lower * one.drop) / (1 - lower);
      return [weighed(drop / each.drop), weighed(upper({ power, drop }) / upper(each))];
    });
    const strays = NAMES.map((name, i) => (x[i]! - EXPECTED[name][0]) / EXPECTED[name][1]);
    return [...ofCases, ...strays];
  };
  const begin = NAMES.map((name) => start?.[name] ?? EXPECTED[name][0]);
  const scale = NAMES.map((name) => EXPECTED[name][1]);
  return constantsOf(leastSquares(misses, begin, scale, start ? 12 : 60));
}

/** Its square grows as the miss's beyond WILD. */
function weighed(ratio: number): number {
  const away = Math.log(Math.max(ratio, 1e-2)) / WILD;
  return Math.sign(away) * Math.sqrt(2 * (Math.sqrt(1 + away * away) - 1));
}
