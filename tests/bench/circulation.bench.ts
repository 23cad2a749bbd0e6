/** How long a periodic answer takes, cold and after a change, beside a fixed amount of arithmetic in the same run. */
import { bench, describe } from "vitest";
import { solve } from "../../src/sim/circulation/solve.ts";
import { CASES, type CirculationRequest, type ParameterValue } from "../../src/sim/parameters/request.ts";

const request = (set: Readonly<Record<string, ParameterValue>>, rest: Partial<CirculationRequest> = {}) =>
  ({
    kind: "circulation",
    stage: "extracardiac",
    body: CASES.caseA,
    volumeRule: "hold-atrial-pressure",
    set,
    ...rest,
  }) satisfies CirculationRequest;

/** Keeps results alive. */
const kept = new Float64Array(1);
const REFERENCE = "reference: a million exponentials";

describe("a periodic answer (bars: 250 ms cold, 60 ms after a change)", () => {
  bench(REFERENCE, () => {
    let sum = 0;
    for (let i = 0; i < 1e6; i++) sum += Math.exp(-i * 1e-6);
    kept[0] = sum;
  });
  for (const [name, asked] of [
    ["child", request({})],
    ["adult", request({}, { body: CASES.caseB })],
    ["two ventricles, adult", request({}, { body: CASES.caseB, stage: "two-ventricle" })],
    ["exertion, adult (two states)", request({ metabolicEquivalents: 4 }, { body: CASES.caseB })],
    ["deep breaths, child (two states)", request({ breathing: "deep" })],
    [
      "at the Glenn stage, exertion, child (two states)",
      request({ metabolicEquivalents: 3 }, { stage: "glenn" }),
    ],
  ] as const) {
    bench(`cold: ${name}`, () => {
      kept[0] = solve(asked).pressures.svc;
    });
    const start = solve(asked).state;
    let turn = 0;
    bench(`after a change of fenestration: ${name}`, () => {
      const set = { ...asked.set, fenestrationDiameter: turn++ % 2 ? 3 : 3.5 };
      kept[0] = solve({ ...asked, set }, { start }).pressures.svc;
    });
    bench(`after a change of lung resistance: ${name}`, () => {
      const set = { ...asked.set, pulmonaryResistanceIndex: turn++ % 2 ? 1.8 : 2 };
      kept[0] = solve({ ...asked, set }, { start }).pressures.svc;
    });
  }
});
