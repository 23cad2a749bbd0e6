/** The numerical bars of the model's section 1. */
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { networkOf } from "../../../src/sim/circulation/network/circuit-network.ts";
import type { Point } from "../../../src/sim/circulation/network/compartments.ts";
import { totalVolume, volumeControl } from "../../../src/sim/circulation/regulation/volume-rule.ts";
import { findPeriodic } from "../../../src/sim/circulation/search/periodic.ts";
import { solve } from "../../../src/sim/circulation/solve.ts";
import { pathwayLaw } from "../../../src/sim/hydraulics/pathway-network.ts";
import { STAGES } from "../../../src/sim/parameters/request.ts";
import { anyRequest } from "./any-request.ts";
import { lawsBroken } from "./laws-broken.ts";
import { ADULT, answer, CHILD, request } from "./requests.ts";

const SETTINGS: readonly Record<string, number | string>[] = [
  {},
  { metabolicEquivalents: 5 },
  { fenestrationDiameter: 4, atrioventricularValveLeak: 20 },
];

describe("volume", () => {
  test.each(STAGES)("%s keeps its blood to a billionth over a minute of circulation", (stage) => {
    const asked = request(stage, CHILD, {}, "fixed-volume");
    const network = networkOf(asked, pathwayLaw(asked));
    const { point, stepper, heartPeriod, forcing } = findPeriodic(
      { request: asked, network, fineness: 1, adapted: undefined },
      volumeControl(asked, network),
    );
    const before = totalVolume(point);
    const state = point.slice() as Point;
    for (let seconds = 0; seconds < 60; seconds += heartPeriod * forcing.beats)
      stepper.advance(state, heartPeriod / forcing.steps, point, () => {});
    expect(Math.abs(totalVolume(state) / before - 1)).toBeLessThan(1e-9);
  });
});

describe("energy", () => {
  for (const stage of STAGES)
    for (const body of [CHILD, ADULT])
      test(`the budget of ${stage} at ${body.ageYears} years closes within 1 % at rest, in exertion, with leaks and on a ventilator`, () => {
        for (const set of [...SETTINGS, { breathing: "ventilator" }]) {
          const { energy } = answer(stage, body, set);
          expect(Math.abs(energy.residualPercent)).toBeLessThan(1);
          const total = (powers: Readonly<Record<string, number>>) =>
            Object.values(powers).reduce((sum, power) => sum + power, 0);
          expect(total(energy.sources)).toBeCloseTo(energy.in, 6);
          expect(total(energy.losses)).toBeCloseTo(energy.lost, 6);
        }
      });

  test("the budget closes where blood goes on sinking into the legs: upright, in a Valsalva manoeuvre", () => {
    for (const stage of ["two-ventricle", "extracardiac"] as const) {
      const { energy } = answer(stage, ADULT, { posture: "upright", breathing: "valsalva" });
      expect(Math.abs(energy.residualPercent), stage).toBeLessThan(0.1);
    }
  });

  test("the ledger's rows add up to the pathway's loss in the budget", () => {
    const { pathway, energy } = answer("extracardiac");
    const rows = pathway.ledger.filter(({ branch }) => branch !== "fenestration");
    const listed = rows.reduce((sum, { powerLoss }) => sum + powerLoss, 0);
    const budgeted = ["pathwayIvc", "pathwaySvc", "pathwayLeft", "pathwayRight"].reduce(
      (sum, name) => sum + energy.losses[name]!,
      0,
    );
    expect(listed / budgeted).toBeCloseTo(1, 2);
    expect(pathway.powerLoss).toBeCloseTo(listed, 6);
  });
});

describe("time step", () => {
  for (const stage of STAGES)
    test(`halving it moves no average of ${stage} by more than 0.2 %`, () => {
      for (const set of SETTINGS) {
        const asked = request(stage, CHILD, set, "fixed-volume");
        const coarse = solve(asked);
        const fine = solve(asked, { fineness: 2, start: coarse.state });
        for (const group of ["pressures", "flows", "saturations"] as const)
          for (const [name, value] of Object.entries(coarse[group])) {
            const reference = (fine[group] as Record<string, number>)[name]!;
            const allowed = 0.002 * Math.max(Math.abs(reference), 1e-3);
            expect(Math.abs(value - reference), `${group}.${name}`).toBeLessThanOrEqual(allowed);
          }
      }
    });
});

describe("any settings inside the stated bounds", () => {
  test("60 random sets give an answer that keeps every law, or a plain reason; `scripts/random-settings.ts` runs 10,000", () => {
    fc.assert(
      fc.property(anyRequest, (asked) => {
        expect(lawsBroken(solve(asked))).toEqual([]);
      }),
      { numRuns: 60, seed: 20260101, endOnFailure: true },
    );
  });
});

test("a start near or far, or of another kind of heart, changes the way and not the answer", () => {
  const asked = request("extracardiac", CHILD, { fenestrationDiameter: 4 });
  const cold = solve(asked);
  for (const from of [answer("extracardiac"), answer("two-ventricle"), answer("atriopulmonary", ADULT)]) {
    const warm = solve(asked, { start: from.state });
    expect(warm.pressures.pathway).toBeCloseTo(cold.pressures.pathway, 2);
    expect(warm.flows.systemic / cold.flows.systemic).toBeCloseTo(1, 3);
  }
});
