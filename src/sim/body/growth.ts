/** From body surface area to a whole parameter set. */
import type { Stage } from "../parameters/request.ts";
import { ADULT, CHILD, HEALTHY, type ReferenceSet } from "./reference-sets.ts";

/**
 * Each value runs as a power of body surface area through the child's and the adult's, so that both are met exactly. With two
 * ventricles it is that, times what the healthy adult has over an adult with one ventricle of the same size.
 * @param bsa m2
 */
export function referenceSet(stage: Stage, bsa: number): ReferenceSet {
  if (stage !== "two-ventricle") return fill((key) => grownValue(key, bsa));
  return fill((key) => (grownValue(key, bsa) * HEALTHY[key]) / grownValue(key, HEALTHY.bsa));
}

/** What runs with age alone: straight between a value at 5 and one at 20 years, level outside; in the unit of both. */
export const byAge = (child: number, adult: number, ageYears: number): number =>
  child + (adult - child) * Math.min(1, Math.max(0, (ageYears - 5) / 15));

const SPAN = Math.log(ADULT.bsa / CHILD.bsa);

const grownValue = (key: keyof ReferenceSet, bsa: number): number =>
  CHILD[key] * (ADULT[key] / CHILD[key]) ** (Math.log(bsa / CHILD.bsa) / SPAN);

const KEYS = Object.keys(CHILD) as (keyof ReferenceSet)[];

const fill = (value: (key: keyof ReferenceSet) => number): ReferenceSet =>
  Object.fromEntries(KEYS.map((key) => [key, value(key)])) as unknown as ReferenceSet;
