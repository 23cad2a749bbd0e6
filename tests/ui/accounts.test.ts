/** What the energy budget and the body's age show: words for every row, bodies between the cases. */
import { expect, test } from "vitest";
import { hasMessage } from "../../src/i18n/index.ts";
import { occludeFenestration } from "../../src/sim/circulation/experiments/test-occlusion.ts";
import { bodyAt, CASES, occluded, type ParameterValue, STAGES } from "../../src/sim/parameters/request.ts";
import { bodyName, bodyNamed } from "../../src/ui/parameter-form.tsx";
import { ADULT, answer, CHILD, request } from "../sim/circulation/requests.ts";
import { within } from "../within.ts";

test("every row that an energy budget can have is named in words", () => {
  const names = new Set<string>();
  const sets: Readonly<Record<string, ParameterValue>>[] = [
    { fenestrationDiameter: 4, calfPumpPressure: 60 },
    { breathing: "valsalva" },
  ];
  for (const stage of STAGES)
    for (const set of sets) {
      const { energy } = answer(stage, ADULT, set);
      for (const name of [...Object.keys(energy.sources), ...Object.keys(energy.losses)]) names.add(name);
    }
  expect(names.size).toBeGreaterThan(25);
  for (const name of names) expect(hasMessage(`energy.${name}`), name).toBe(true);
});

test("a body between the cases is neither of them, and the ends of the slider are", () => {
  expect(bodyName(bodyAt(5))).toBe("caseA");
  expect(bodyName(bodyAt(19))).toBe("caseB");
  expect(bodyName(bodyAt(11))).toBe("between");
  expect(bodyNamed("caseB")).toEqual(CASES.caseB);
  const { bsa } = bodyNamed("between");
  expect(bsa).toBeGreaterThan(CASES.caseA.bsa);
  expect(bsa).toBeLessThan(CASES.caseB.bsa);
});

test("what the page asks for a test occlusion is what the model answers as closed", () => {
  const { open, closed } = occludeFenestration(request("extracardiac", CHILD, { fenestrationDiameter: 4 }));
  expect(occluded(open.request, open.extras.bloodVolume!)).toEqual(closed.request);
  within(closed.pressures.pathway - open.pressures.pathway, 0.4, 1.2, "pathway, mmHg");
  within(closed.saturations.arterial - open.saturations.arterial, 4, 9, "arterial saturation, %");
});
