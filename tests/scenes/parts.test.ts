import { expect, test } from "vitest";
import { vesselsOf } from "../../src/scenes/circuit/anatomy.ts";
import { ORGANS } from "../../src/scenes/circuit/outlines.ts";
import { partsOf } from "../../src/scenes/circuit/parts.ts";
import { platesOf } from "../../src/scenes/circuit/plates.ts";
import { litParts } from "../../src/scenes/circuit/two-ventricles/lit-outlines.ts";
import { spotsOf } from "../../src/scenes/layers/spots.ts";
import { pathwayGeometry } from "../../src/sim/geometry/pathways/index.ts";
import { PATHWAY_STAGES, STAGES } from "../../src/sim/parameters/request.ts";
import { START } from "../../src/state/scene-state.ts";

const drawn = (stage: (typeof STAGES)[number]) => [
  ...vesselsOf(stage, true).map(({ name }) => name),
  ...ORGANS.map(({ name }) => name),
  ...(stage === "atriopulmonary" ? ["pathway"] : []),
  ...(stage === "two-ventricle" ? litParts().keys() : []),
  // painted by the one anatomy
  "atrium",
  "ventricle",
];

test.each(STAGES)("%s: pointing at a place lights the vessels or the organ themselves", (stage) => {
  for (const { name } of platesOf(stage)) {
    const lit = drawn(stage).filter((part) => partsOf(name).has(part));
    expect(lit.length, name).toBeGreaterThan(0);
  }
  expect(partsOf(null).size).toBe(0);
  expect(partsOf("nowhere").size).toBe(0);
});

test("every part that a place names is drawn in some stage", () => {
  const all = new Set(STAGES.flatMap(drawn));
  for (const place of [
    "greatVeins",
    "lungBed",
    "ventricle",
    ...platesOf("extracardiac").map(({ name }) => name),
  ])
    for (const part of partsOf(place)) expect(all, place).toContain(part);
});

test.each(PATHWAY_STAGES)("%s: the great veins are two lights, any other place is one", (stage) => {
  const geometry = pathwayGeometry({ ...START.request, stage })!;
  expect(spotsOf(geometry, "greatVeins")).toHaveLength(2);
  for (const { name } of geometry.places) expect(spotsOf(geometry, name)).toHaveLength(1);
  expect(spotsOf(geometry, null)).toHaveLength(0);
});
