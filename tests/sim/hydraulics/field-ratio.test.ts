import { readFileSync } from "node:fs";
import { expect, test } from "vitest";
import { RATIO_TABLE, ratioTable } from "../../../src/cli/validation/ratio-table.ts";
import { type FieldRatio, fieldRatio, fieldRatios } from "../../../src/sim/hydraulics/field-ratio.ts";
import {
  CASES,
  type CirculationRequest,
  PATHWAY_STAGES,
  type Stage,
} from "../../../src/sim/parameters/request.ts";

const ask = (stage: Stage, set: CirculationRequest["set"] = {}) =>
  ({ kind: "circulation", stage, body: CASES.caseA, volumeRule: "hold-output", set }) as const;
const flowAt = (index: number) => (index * CASES.caseA.bsa * 1e-3) / 60;
const known = (value: FieldRatio | undefined): number => value!.power;

test("the page shows the table as it was measured", () => {
  const page = readFileSync("docs/model-pathways.md", "utf8");
  expect(RATIO_TABLE.exec(page)![0]).toBe(ratioTable(fieldRatios));
});

test("the tabulated points come back as they were measured", () => {
  const { powers, index, cavalOffset, pathwayNarrowing } = fieldRatios;
  expect(known(fieldRatio(ask("extracardiac", { cavalOffset: 0 }), flowAt(index[0]!)))).toBeCloseTo(
    powers.extracardiac![0]!,
    9,
  );
  const corner = { cavalOffset: -cavalOffset.at(-1)!, pathwayNarrowing: pathwayNarrowing.at(-1)! };
  const slowest = (pathwayNarrowing.length * cavalOffset.length - 1) * index.length;
  expect(known(fieldRatio(ask("extracardiac", corner), flowAt(index[0]!)))).toBeCloseTo(
    powers.extracardiac![slowest]!,
    9,
  );
});

test("between them it is linear, beyond them it holds, and other stages have no table", () => {
  const least = fieldRatios.index[0]!;
  const at = (cavalOffset: number) =>
    known(fieldRatio(ask("lateral-tunnel", { cavalOffset }), flowAt(least)));
  expect(at(4)).toBeCloseTo((at(0) + at(8)) / 2, 9);
  expect(at(20)).toBe(at(8));
  expect(fieldRatio(ask("extracardiac"), flowAt(0.5 * least))).toEqual(
    fieldRatio(ask("extracardiac"), flowAt(least)),
  );
  expect(fieldRatio(ask("two-ventricle"), flowAt(3))).toBeUndefined();
});

test("only fields whose energy budget closes within 10 % count; they lose less than the handbook says, more than a twentieth of it", () => {
  for (const stage of PATHWAY_STAGES)
    for (const table of [fieldRatios.powers, fieldRatios.drops])
      table[stage]!.forEach((ratio, n) => {
        expect(ratio === null).toBe(Math.abs(fieldRatios.audits[stage]![n]!) > 10);
        if (ratio === null) return;
        expect(ratio).toBeGreaterThan(1 / 20);
        expect(ratio).toBeLessThan(1);
      });
});

test("in the middle of a cell the ratio is the mean of its eight corners, power and drop alike, by the body's own index", () => {
  const { powers, drops, index } = fieldRatios;
  const middle = { cavalOffset: 4, pathwayNarrowing: 30 };
  const flow = (index[1]! + index[2]!) / 2;
  const mean = (table: readonly (number | null)[]) => {
    let sum = 0;
    for (const offset of [0, 1])
      for (const narrowing of [1, 2])
        for (const fast of [1, 2]) sum += table[(offset * 3 + narrowing) * index.length + fast]! / 8;
    return sum;
  };
  for (const body of [CASES.caseA, CASES.caseB]) {
    const found = fieldRatio({ ...ask("extracardiac", middle), body }, (flow * body.bsa * 1e-3) / 60)!;
    expect(found.power).toBeCloseTo(mean(powers.extracardiac!), 9);
    expect(found.drop).toBeCloseTo(mean(drops.extracardiac!), 9);
  }
});

test("the chamber has no narrowing to look up: any gives the same", () => {
  const at = (pathwayNarrowing: number) => fieldRatio(ask("atriopulmonary", { pathwayNarrowing }), flowAt(3));
  expect(at(40)).toEqual(at(0));
  expect(at(0)!.drop).toBeGreaterThan(0);
});
