import { expect, test } from "vitest";
import { haycock, mosteller, usualWeight } from "../../../src/sim/body/bsa.ts";
import { referenceSet } from "../../../src/sim/body/growth.ts";
import { ADULT, CHILD, HEALTHY } from "../../../src/sim/body/reference-sets.ts";

test("body surface area of 18.3 kg and 110 cm, 70.6 kg and 176.8 cm (Mosteller 1987; Haycock 1978)", () => {
  expect(mosteller(110, 18.3)).toBeCloseTo(0.748, 3);
  expect(mosteller(176.8, 70.6)).toBeCloseTo(1.862, 3);
  expect(haycock(110, 18.3)).toBeCloseTo(0.747, 3);
  expect(haycock(176.8, 70.6)).toBeCloseTo(1.863, 3);
});

test("growth passes through the sets of the child, the adult and the healthy adult", () => {
  for (const key of Object.keys(CHILD) as (keyof typeof CHILD)[]) {
    expect(referenceSet("extracardiac", CHILD.bsa)[key]).toBeCloseTo(CHILD[key], 9);
    expect(referenceSet("extracardiac", ADULT.bsa)[key] / ADULT[key]).toBeCloseTo(1, 9);
    expect(referenceSet("two-ventricle", HEALTHY.bsa)[key] / HEALTHY[key]).toBeCloseTo(1, 9);
  }
});

test("one body has one set, whatever the stage after the first", () => {
  const set = referenceSet("glenn", 1.1);
  for (const stage of ["atriopulmonary", "lateral-tunnel", "extracardiac"] as const)
    expect(referenceSet(stage, 1.1)).toEqual(set);
});

test("the usual weight at 0.72 and 1.72 m2 is that of the reference bodies", () => {
  expect(usualWeight(0.72)).toBeCloseTo(18.3, 6);
  expect(usualWeight(1.72)).toBeCloseTo(63, 6);
});
