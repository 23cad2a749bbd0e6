/** The fitted law as data (`loss-law.json`, written by `npx tsx scripts/three-d.ts fit`), and what is made of it once. */
import { entryAt } from "../../checked/present.ts";
import type { PathwayStage } from "../../parameters/request.ts";
import type { LossConstants } from "./constants.ts";
import type { Crossing } from "./crossing.ts";
import { type Process, processOf, type Samples, type Spread } from "./gaussian-process.ts";
import stored from "./loss-law.json" with { type: "json" };
import type { Ranges } from "./range.ts";

/** One fitted quantity: its process and the values that it passes near; all dimensionless. */
export interface Fitted {
  readonly spread: Spread;
  /** deviations that hold 90 % of cases that were left out of a fit */
  readonly reach: number;
  readonly values: readonly number[];
  readonly errors: readonly number[];
}

/** The stored law; all its numbers are dimensionless. */
export interface LawSet {
  readonly constants: LossConstants;
  readonly crossing: { readonly tubes: Crossing; readonly chamber: Crossing };
  /** standard deviation of the crossing share where streams that hit each other head-on may settle in either of two ways */
  readonly unsettled: number;
  /** features by which the interpolation goes, by feature, by case in the order of docs/validation/loss-law-held-out.json: so the page weighs less */
  readonly features: readonly (readonly number[])[];
  /** what 3D has over the handbook, as logarithms, of power and drop; and what the crossing share has beyond its rule */
  readonly power: Fitted;
  readonly drop: Fitted;
  readonly share: Fitted;
  /** logarithm by which the handbook's power and drop miss 90 % of cases: the least that the band is outside the set */
  readonly outside: { readonly power: number; readonly drop: number; readonly share: number };
  /** what each stage's cases span; a stage without cases is missing */
  readonly ranges: Readonly<Partial<Record<PathwayStage, Ranges>>>;
}

export const LAW: LawSet = stored as unknown as LawSet;
export const CONSTANTS: LossConstants = LAW.constants;

/** What is interpolated. */
type Quantity = "power" | "drop" | "share";
const made = new Map<Quantity, Process>();

/** Made when first asked for: ten to thirty milliseconds each. */
export function fittedProcess(quantity: Quantity): Process {
  let process = made.get(quantity);
  if (!process) {
    const { spread, values, errors } = LAW[quantity];
    const points = values.map((_, i) => LAW.features.map((each) => entryAt(each, i)));
    const samples: Samples = { points, values, errors };
    process = processOf(samples, spread);
    made.set(quantity, process);
  }
  return process;
}
