/** A loss of blood, step by step. */
import { beforeEach, expect, test, vi } from "vitest";
import { loseBlood } from "../../../src/sim/circulation/blood-loss.ts";
import { giveBack, restingRegion } from "../../../src/sim/circulation/give-back.ts";
import * as solving from "../../../src/sim/circulation/solve.ts";
import { traceMean } from "../../../src/sim/circulation/trace-mean.ts";
import { REGIONS } from "../../../src/sim/exchange/index.ts";
import { lastingTissue } from "../../../src/sim/exchange/lasting-tissue.ts";
import { PRESETS } from "../../../src/sim/presets.ts";
import { ADULT, request } from "./requests.ts";

vi.mock("../../../src/sim/circulation/solve.ts", { spy: true });
const solve = vi.mocked(solving.solve);
beforeEach(() => {
  solve.mockClear();
});

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

test("the circulation is solved once at each look and once at the end, and a look without an answer ends it", () => {
  loseBlood(HEALTHY, 470, 10);
  expect(solve).toHaveBeenCalledTimes(1 + 4 + 1);
  solve.mockClear();
  const { run } = solving.solve(HEALTHY);
  const failed = { ...solving.solve(HEALTHY), run: { ...run, converged: false, reason: "too little blood" } };
  solve.mockClear();
  const before = solving.solve(HEALTHY);
  solve.mockReturnValueOnce(before).mockReturnValueOnce(before).mockReturnValueOnce(failed);
  const { after } = loseBlood(HEALTHY, 470, 10);
  expect(after.run.reason).toBe("too little blood");
  expect(solve).toHaveBeenCalledTimes(1 + 3);
});

test("lymph empties against the atrium where the thoracic duct has been joined to it", () => {
  const joined = solving.solve(request("extracardiac", ADULT, { thoracicDuct: "atrium" }));
  for (const region of REGIONS)
    expect(lastingTissue(region, joined).lymphOutflow).toBe(joined.pressures.atrium);
});

test("the mean of a closed curve counts its first value once", () => {
  expect(traceMean(Float64Array.of(4, 1, 1, 4))).toBe(2);
  const { traces, flows } = solving.solve(HEALTHY);
  expect(traceMean(traces.flows.svc!)).toBeCloseTo(flows.svc, 4);
});
