import { expect, test } from "vitest";
import { fieldRatio, fieldRatios } from "../../../src/sim/hydraulics/field-ratio.ts";
import { CASES, type CirculationRequest, PATHWAY_STAGES, type Stage } from "../../../src/sim/request.ts";

const ask = (stage: Stage, set: CirculationRequest["set"] = {}) =>
  ({ kind: "circulation", stage, body: CASES.caseA, volumeRule: "hold-output", set }) as const;
const flowAt = (index: number) => (index * CASES.caseA.bsa * 1e-3) / 60;

test("the tabulated points come back as they were measured", () => {
  const { ratios } = fieldRatios;
  expect(fieldRatio(ask("extracardiac", { cavalOffset: 0 }), flowAt(2))).toBeCloseTo(
    ratios.extracardiac![0]!,
    9,
  );
  const both = ask("extracardiac", { cavalOffset: -8, pathwayNarrowing: 30 });
  expect(fieldRatio(both, flowAt(2))).toBeCloseTo(ratios.extracardiac!.at(-1)!, 9);
  expect(fieldRatio(ask("atriopulmonary", { cavalOffset: 8 }), flowAt(2))).toBeCloseTo(
    ratios.atriopulmonary!.at(-1)!,
    9,
  );
});

test("between them it is linear, beyond them it holds, and other stages have no table", () => {
  const at = (cavalOffset: number) => fieldRatio(ask("lateral-tunnel", { cavalOffset }), flowAt(2))!;
  expect(at(4)).toBeCloseTo((at(0) + at(8)) / 2, 9);
  expect(at(20)).toBe(at(8));
  expect(fieldRatio(ask("extracardiac"), flowAt(4))).toBe(fieldRatio(ask("extracardiac"), flowAt(2)));
  expect(fieldRatio(ask("two-ventricle"), flowAt(3))).toBeUndefined();
});

test("only fields whose energy book closes within 10 % count, and they lie within a factor of three of the handbook", () => {
  for (const stage of PATHWAY_STAGES) {
    fieldRatios.ratios[stage]!.forEach((ratio, n) => {
      expect(ratio === null).toBe(Math.abs(fieldRatios.audits[stage]![n]!) > 10);
      if (ratio === null) return;
      expect(ratio).toBeGreaterThan(1 / 3);
      expect(ratio).toBeLessThan(3);
    });
  }
});
