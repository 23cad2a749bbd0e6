/** A Valsalva manoeuvre beat by beat. */
import { expect, test } from "vitest";
import { valsalvaPhases } from "../../../../src/sim/circulation/experiments/valsalva-phases.ts";
import { solve } from "../../../../src/sim/circulation/solve.ts";
import { ADULT, request } from "../requests.ts";

test.each(["two-ventricle", "extracardiac"] as const)(
  "its last beat is the one that an answer reports, and later it is over (%s)",
  (stage) => {
    const rest = solve(request(stage, ADULT));
    const strained = solve(request(stage, ADULT, { breathing: "valsalva" }));
    const { last, lowest, lowestStroke, overshoot } = valsalvaPhases(request(stage, ADULT))!;
    expect(last * rest.pressures.aortaMean).toBeCloseTo(strained.pressures.aortaMean, 6);
    expect(lowest).toBeLessThanOrEqual(last);
    expect(lowestStroke * rest.extras.strokeVolume!).toBeLessThanOrEqual(
      strained.extras.strokeVolume! + 1e-9,
    );
    expect(overshoot).toBeGreaterThan(1.02);
  },
);

test("who has no state at rest has none", () => {
  expect(
    valsalvaPhases(request("extracardiac", ADULT, { bloodVolume: 300 }, "fixed-volume")),
  ).toBeUndefined();
});
