/** A loss of blood, step by step. */
import { expect, test, vi } from "vitest";
import { traceMean } from "../../../../src/sim/circulation/answer/trace-mean.ts";
import { loseBlood } from "../../../../src/sim/circulation/experiments/blood-loss.ts";
import { giveBack, restingRegion } from "../../../../src/sim/circulation/experiments/give-back.ts";
import { drawnIn } from "../../../../src/sim/circulation/experiments/vein-creep.ts";
import { solve } from "../../../../src/sim/circulation/solve.ts";
import { REGIONS } from "../../../../src/sim/exchange/index.ts";
import { lastingTissue } from "../../../../src/sim/exchange/lasting-tissue.ts";
import { PRESETS } from "../../../../src/sim/presets.ts";
import { ADULT, request } from "../requests.ts";

const HEALTHY = request("two-ventricle", ADULT);
const WET = { ...PRESETS["failing-adult"], set: { ...PRESETS["failing-adult"].set, heldAtrialPressure: 16 } };

test("nothing is given back at rest, also where fluid overflows into chest and abdomen", () => {
  const before = solve(WET);
  expect(before.exchange.overflow).toBeGreaterThan(10);
  for (const region of REGIONS) {
    const state = restingRegion(region, before);
    const { pressure } = state;
    for (let minute = 0; minute < 60; minute++)
      expect(giveBack(state, { before, after: before, strength: 1 }, 1), region.name).toBeCloseTo(0, 6);
    expect(state.pressure, region.name).toBeCloseTo(pressure, 6);
  }
});

test("what comes back thins the blood that the circulation is solved with", () => {
  const { before, after, regained } = loseBlood(HEALTHY, 470, 10);
  const left = before.extras.bloodVolume! - 470;
  expect(after.request.body.haemoglobin).toBeCloseTo(
    (before.request.body.haemoglobin * left) / (left + regained),
    9,
  );
  expect(after.request.body.haemoglobin).toBeLessThan(before.request.body.haemoglobin - 0.2);
});

test("veins draw in over minutes as far as they have been emptied, and give up what one loss at once does not", () => {
  const before = solve(HEALTHY);
  expect(drawnIn(0, before, before, 60)).toBe(0);
  expect(drawnIn(80, before, before, 600)).toBeCloseTo(0, 6);
  const { after } = loseBlood(HEALTHY, 1000, 1);
  const [soon, late] = [drawnIn(0, before, after, 5), drawnIn(0, before, after, 35)];
  expect(late).toBeGreaterThan(2 * soon);
  expect(late).toBeGreaterThan(100);
  expect(loseBlood(HEALTHY, 1000, 35).after.request.set.venousTone).toBeGreaterThan(4);
  expect(after.request.set.venousTone).toBeLessThan(1);
});

test("the circulation is solved once at each look and once at the end, and a look without an answer ends it", () => {
  const asked = vi.fn(solve);
  loseBlood(HEALTHY, 470, 10, asked);
  expect(asked).toHaveBeenCalledTimes(1 + 4 + 1);
  const before = solve(HEALTHY);
  const failed = { ...before, run: { ...before.run, converged: false, reason: "too little blood" } };
  const failing = vi
    .fn<typeof solve>(() => failed)
    .mockReturnValueOnce(before)
    .mockReturnValueOnce(before);
  const { after } = loseBlood(HEALTHY, 470, 10, failing);
  expect(after.run.reason).toBe("too little blood");
  expect(failing).toHaveBeenCalledTimes(1 + 2);
});

test("lymph empties against the atrium where the thoracic duct has been joined to it", () => {
  const joined = solve(request("extracardiac", ADULT, { thoracicDuct: "atrium" }));
  for (const region of REGIONS)
    expect(lastingTissue(region, joined).lymphOutflow).toBe(joined.pressures.atrium);
});

test("the mean of a closed curve counts its first value once", () => {
  expect(traceMean(Float64Array.of(4, 1, 1, 4))).toBe(2);
  const { traces, flows } = solve(HEALTHY);
  expect(traceMean(traces.flows.svc!)).toBeCloseTo(flows.svc, 4);
});
