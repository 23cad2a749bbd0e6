import { describe, expect, test } from "vitest";
import { checkRequest } from "../../../src/sim/circulation/check-request.ts";
import type { Fault } from "../../../src/sim/faults.ts";
import { OUTPUTS, readOutput } from "../../../src/sim/parameters/outputs.ts";
import { defaultSetting, PARAMETERS } from "../../../src/sim/parameters/parameters.ts";
import { STAGES, USUAL_HAEMOGLOBIN } from "../../../src/sim/parameters/request.ts";
import { ADULT, answer, CHILD, request } from "./requests.ts";

const faultsOf = (input: unknown): readonly Fault[] => {
  const checked = checkRequest(input);
  return "faults" in checked ? checked.faults : [];
};

describe("a request", () => {
  test("as the contract shows it passes unchanged", () => {
    const asked = request("extracardiac", CHILD, { fenestrationDiameter: 4, breathing: "held" });
    expect(checkRequest(asked)).toEqual({ request: asked });
  });
  test("without rule and settings takes the usual rule", () => {
    const checked = checkRequest({ kind: "circulation", stage: "extracardiac", body: CHILD });
    expect(checked).toEqual({ request: request("extracardiac") });
  });
  test("without haemoglobin takes the usual one, and asks for what has none", () => {
    const { haemoglobin: _, ...body } = CHILD;
    const asked = { kind: "circulation", stage: "extracardiac", body };
    expect(checkRequest(asked)).toEqual({
      request: request("extracardiac", { ...CHILD, haemoglobin: USUAL_HAEMOGLOBIN }),
    });
    expect(faultsOf({ ...asked, body: {} }).map(({ path }) => path)).toEqual(["body.ageYears", "body.bsa"]);
    expect(faultsOf({ ...asked, body: { ...body, haemoglobin: null } }).map(({ path }) => path)).toEqual([
      "body.haemoglobin",
    ]);
  });
  test("with many faults tells them all, each with its path", () => {
    const faults = faultsOf({
      kind: "circulation",
      stage: "extracardiak",
      body: { ageYears: 5, bsa: "big", haemoglobin: 30, weight: 18 },
      volumeRule: "none",
      set: { fenestrationDiameter: 40, breathing: "loud", reflex: 1 },
      more: true,
    });
    expect(faults.map(({ path }) => path).sort()).toEqual([
      "body.bsa",
      "body.haemoglobin",
      "body.weight",
      "more",
      "set.breathing",
      "set.fenestrationDiameter",
      "set.reflex",
      "stage",
      "volumeRule",
    ]);
  });
  test("with a misspelt parameter is answered with the nearest", () => {
    const [fault] = faultsOf({ ...request("extracardiac"), set: { fenestrationDiametr: 4 } });
    expect(fault!.allowed).toContain('"fenestrationDiameter"');
  });
  test.each([null, 3, "text", [], undefined])("that is %j is refused", (input) => {
    expect(faultsOf(input)).toHaveLength(1);
  });
  test.each([Number.NaN, Number.POSITIVE_INFINITY, null, "4"])("with the number %j is refused", (value) => {
    expect(faultsOf({ ...request("extracardiac"), set: { conduitDiameter: value } })).toHaveLength(1);
  });
});

describe("the tables", () => {
  test("every default lies within its own range, for every stage and body", () => {
    for (const parameter of PARAMETERS)
      for (const stage of STAGES)
        for (const body of [CHILD, ADULT, { ageYears: 1, bsa: 0.45, haemoglobin: 12 }]) {
          const value = defaultSetting(parameter, stage, body);
          if (parameter.kind === "word") expect(parameter.words).toContain(value);
          else {
            expect(value, parameter.name).toBeGreaterThanOrEqual(parameter.min);
            expect(value, parameter.name).toBeLessThanOrEqual(parameter.max);
          }
        }
  });
  test("every listed output is a number of the answer, and every single number is listed", () => {
    for (const stage of STAGES) {
      const circulation = answer(stage);
      const listed = OUTPUTS.filter(({ stages }) => !stages || stages.includes(stage)).map(
        ({ path }) => path,
      );
      for (const path of listed) expect(readOutput(circulation, path), path).toBeTypeOf("number");
      for (const group of [
        "pressures",
        "flows",
        "saturations",
        "pathway",
        "energy",
        "exchange",
        "extras",
      ] as const)
        for (const [name, value] of Object.entries(circulation[group]))
          if (typeof value === "number") expect(listed).toContain(`${group}.${name}`);
    }
  });
});
