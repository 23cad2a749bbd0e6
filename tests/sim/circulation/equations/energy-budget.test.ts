/** The energy budget, row by row: short runs in which each row carries enough to be missed. */
import { describe, expect, test } from "vitest";
import type { ParameterValue, Stage } from "../../../../src/sim/parameters/request.ts";
import { answer, CHILD } from "../requests.ts";

const budget = (stage: Stage, set: Readonly<Record<string, ParameterValue>> = {}) => {
  const { energy } = answer(stage, CHILD, set);
  /** % of all that is put in */
  const part = (name: string) => (100 * (energy.sources[name] ?? energy.losses[name] ?? 0)) / energy.in;
  return { ...energy, part };
};
const EXERTION = { metabolicEquivalents: 4, atrioventricularValveLeak: 20, semilunarValveLeak: 10 };
const SITUATIONS: readonly (readonly [Stage, Readonly<Record<string, ParameterValue>>])[] = [
  ["two-ventricle", {}],
  ["two-ventricle", EXERTION],
  ["glenn", EXERTION],
  ["atriopulmonary", { fenestrationDiameter: 6, breathing: "deep" }],
  ["extracardiac", EXERTION],
  ["extracardiac", { pathwayNarrowing: 70, leftBranchStenosis: 60, breathing: "ventilator" }],
];

describe("the energy budget", () => {
  test.each(SITUATIONS)("of %s with %o closes within 3 parts in 10,000", (stage, set) => {
    const { residualPercent, sources, losses, ...energy } = budget(stage, set);
    const total = (powers: Readonly<Record<string, number>>) =>
      Object.values(powers).reduce((sum, power) => sum + power, 0);
    expect(Math.abs(residualPercent)).toBeLessThan(0.03);
    expect(total(sources) / energy.in).toBeCloseTo(1, 6);
    expect(total(losses) / energy.lost).toBeCloseTo(1, 6);
    // Nothing passive gives energy, and chambers that contract do.
    expect(Object.entries(losses).filter(([, power]) => power < 0)).toEqual([]);
    // The systemic ventricle gives most of it; where another pumps to the lungs, that one a fifth.
    expect(sources.ventricle! / energy.in).toBeGreaterThan(stage === "two-ventricle" ? 0.75 : 0.9);
    expect(sources.ventricle! / energy.in).toBeLessThan(1);
  });

  test("names the right heart's rows only where there is one, the hole's only where it is open", () => {
    const [two, one, open] = [
      budget("two-ventricle"),
      budget("extracardiac"),
      budget("extracardiac", { fenestrationDiameter: 5 }),
    ];
    for (const name of [
      "rightVentricle",
      "rightAtrium",
      "rightAtrioventricularValve",
      "rightSemilunarValve",
    ]) {
      expect(two.part(name), name).toBeGreaterThan(0.05);
      expect(one.part(name), name).toBe(0);
    }
    expect(one.part("fenestration")).toBe(0);
    expect(open.part("fenestration")).toBeGreaterThan(1);
  });

  test("puts the beds first, then the valves; the pathway of a child at rest is under one part in a hundred", () => {
    const { part } = budget("extracardiac");
    expect(part("upperBed")).toBeGreaterThan(20);
    expect(part("splanchnicBed")).toBeGreaterThan(15);
    expect(part("aorta")).toBeGreaterThan(part("semilunarValve"));
    expect(part("semilunarValve")).toBeGreaterThan(part("atrioventricularValve"));
    const pathway = ["pathwayIvc", "pathwaySvc", "pathwayLeft", "pathwayRight"].map(part);
    expect(pathway.reduce((sum, each) => sum + each, 0)).toBeLessThan(1);
    expect(Math.min(...pathway)).toBeGreaterThan(0.01);
  });

  test("books a leaking valve's loss with that valve, and the muscle's pump with the muscle", () => {
    const [rest, leaking] = [budget("extracardiac"), budget("extracardiac", EXERTION)];
    expect(leaking.part("atrioventricularValve")).toBeGreaterThan(5 * rest.part("atrioventricularValve"));
    expect(rest.part("muscle")).toBeCloseTo(0, 3);
    expect(leaking.part("muscle")).toBeGreaterThan(0.05);
  });
});
