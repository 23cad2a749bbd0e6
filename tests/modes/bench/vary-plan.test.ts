import { expect, test } from "vitest";
import { hasMessage } from "../../../src/i18n/index.ts";
import { nearestIndex, numberParameters, planVary, valuesOver } from "../../../src/modes/bench/vary-plan.ts";
import { STAGES } from "../../../src/sim/parameters/request.ts";
import { START } from "../../../src/state/scene-state.ts";

const parameter = (name: string) => numberParameters("extracardiac").find((each) => each.name === name)!;

test("values run from the least to the greatest on the parameter's own steps", () => {
  const conduit = parameter("conduitDiameter");
  const values = valuesOver(conduit, 7);
  expect(values[0]).toBe(conduit.min);
  expect(values.at(-1)).toBe(conduit.max);
  for (const value of values) expect(Math.abs(((value - conduit.min) / conduit.step) % 1)).toBeCloseTo(0, 9);
});

test("every number parameter of every stage gives values inside its range, each once, and has its words", () => {
  for (const stage of STAGES)
    for (const each of numberParameters(stage)) {
      const values = valuesOver(each, 7);
      expect(new Set(values).size, each.name).toBe(values.length);
      expect(Math.min(...values), each.name).toBeGreaterThanOrEqual(each.min - 1e-9);
      expect(Math.max(...values), each.name).toBeLessThanOrEqual(each.max + 1e-9);
      expect(hasMessage(`parameter.${each.name}`), each.name).toBe(true);
    }
});

test("a map solves each pair once; all else stays as it is set", () => {
  const request = { ...START.request, set: { conduitDiameter: 16 } };
  const plan = planVary(request, parameter("fenestrationDiameter"), parameter("pulmonaryResistanceIndex"));
  const pairs = plan.curves.flatMap(({ points }) => points.map((point) => point.request.set));
  expect(new Set(pairs.map((set) => JSON.stringify(set))).size).toBe(25);
  expect(pairs.every((set) => set.conduitDiameter === 16)).toBe(true);
});

test("the marked cell is the one nearest to the present value", () => {
  expect(nearestIndex([0, 2, 4, 6, 8], 4.9)).toBe(2);
  expect(nearestIndex([0, 2], -5)).toBe(0);
});
