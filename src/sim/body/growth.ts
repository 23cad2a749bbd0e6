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

/** Years between which what grows with age alone changes straight from a child's value to an adult's. */
const GROWS = { from: 5, to: 20 };

/** A value at this age (years), in the unit of both; level outside 5 to 20. */
export function byAge(child: number, adult: number, ageYears: number): number {
  const grown = Math.min(1, Math.max(0, (ageYears - GROWS.from) / (GROWS.to - GROWS.from)));
  return child + (adult - child) * grown;
}

const SPAN = Math.log(ADULT.bsa / CHILD.bsa);

const grownValue = (key: keyof ReferenceSet, bsa: number): number =>
  CHILD[key] * (ADULT[key] / CHILD[key]) ** (Math.log(bsa / CHILD.bsa) / SPAN);

const KEYS = Object.keys(CHILD) as (keyof ReferenceSet)[];

const fill = (value: (key: keyof ReferenceSet) => number): ReferenceSet =>
  Object.fromEntries(KEYS.map((key) => [key, value(key)])) as unknown as ReferenceSet;
