/** The handbook's few fitted numbers: least squares of the logarithms of both veins' drops, wild cases weighed less. */
import { nelderMead } from "fmin/index.js";
import type { LossConstants } from "../../src/sim/hydraulics/loss-law/constants.ts";
import { branchDrops, lossOf } from "../../src/sim/hydraulics/loss-law/correction.ts";
import { baseLaw } from "../../src/sim/hydraulics/pathway-network.ts";
import type { SetCase } from "./fit-set.ts";

const NAMES = [
  "jointEntry",
  "turn",
  "facing",
  "ownPart",
  "headOnPlace",
  "clearance",
  "jetLength",
] as const satisfies readonly (keyof LossConstants)[];

/** Where the search begins. */
const START: LossConstants = {
  jointEntry: 1.5,
  turn: 0.65,
  facing: 1.3,
  ownPart: 0.25,
  headOnPlace: -0.09,
  clearance: 0.75,
  jetLength: 1.8,
};

/** Logarithm beyond which a miss counts in proportion, not by its square. */
const WILD = 0.15;

const constantsOf = (x: readonly number[]): LossConstants =>
  Object.fromEntries(NAMES.map((name, i) => [name, x[i]! * START[name]])) as unknown as LossConstants;

/** What the relations alone say: W and Pa. */
export function baseOf({ request, flows, streams }: SetCase, constants: LossConstants) {
  return lossOf(branchDrops(baseLaw(request, flows, constants), flows), streams);
}

export function fitConstants(cases: readonly SetCase[], start?: LossConstants): LossConstants {
  const miss = (x: readonly number[]) => {
    const constants = constantsOf(x);
    return cases.reduce((sum, each) => {
      const { power, drop } = baseOf(each, constants);
      const { lower, lungs } = each.streams;
      const upper = (one: { power: number; drop: number }) =>
        (one.power / lungs - lower * one.drop) / (1 - lower);
      return sum + weighed(drop / each.drop) + weighed(upper({ power, drop }) / upper(each));
    }, 0);
  };
  const begin = NAMES.map((name) => (start ?? START)[name] / START[name]);
  return constantsOf(nelderMead(miss, begin, { maxIterations: start ? 150 : 1500 }).x);
}

function weighed(ratio: number): number {
  const away = Math.log(Math.max(ratio, 1e-3)) / WILD;
  return 2 * (Math.sqrt(1 + away * away) - 1);
}
