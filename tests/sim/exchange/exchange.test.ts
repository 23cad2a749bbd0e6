import { describe, expect, test } from "vitest";
import { albuminCarried, lymphAtRest, regionLymph } from "../../../src/sim/exchange/filtration.ts";
import {
  albuminOf,
  capillaryPressure,
  lymphCarried,
  lymphRatio,
  REGIONS,
  solveExchange,
  steadyExchange,
  tissueCompliance,
} from "../../../src/sim/exchange/index.ts";
import { againstOutflow } from "../../../src/sim/exchange/lymph.ts";
import { answer, CHILD } from "../circulation/requests.ts";

const HARD = { pulmonaryResistanceIndex: 3 };

test("Guyton's balance: 28.3 mmHg out, 28.0 in, 0.3 net at 17.3 mmHg of mean capillary pressure (Guyton & Hall)", () => {
  expect(capillaryPressure(4)).toBeCloseTo(17.3, 9);
  // Out: 17.3 + 3 (tissue below atmosphere) + 8 (tissue protein) = 28.3; in: 28.
  expect(capillaryPressure(4) + 3 + 8 - 28).toBeCloseTo(0.3, 9);
});

test("80 % of a venous rise reaches the capillary (Pappenheimer & Soto-Rivera 1948)", () => {
  expect(capillaryPressure(14) - capillaryPressure(4)).toBeCloseTo(8, 9);
});

test("lymph is 1 at -3 mmHg, 11 at 0, 18 at +2 (teaching function, physiology values, section 8)", () => {
  expect(lymphRatio(-3, 20)).toBeCloseTo(1, 1);
  expect(lymphRatio(0, 20)).toBeCloseTo(11, 0);
  expect(lymphRatio(2, 20)).toBeCloseTo(18, 0);
});

test("tissue is stiff below atmosphere, 0.4 L/mmHg in 70 kg, and slack above, 10 L/mmHg (same)", () => {
  expect(tissueCompliance(-3, 70)).toBeCloseTo(400, 6);
  expect(tissueCompliance(3, 70)).toBeCloseTo(10_000, 6);
  expect(tissueCompliance(0, 70)).toBeCloseTo(5_200, 6);
});

test("what settles balances, for any pressures", () => {
  for (const region of REGIONS)
    for (const venousPressure of [0, 6, 13, 20, 30])
      for (const plasmaOncoticPressure of [12, 20, 28, 35]) {
        const settled = steadyExchange(region, {
          venousPressure,
          plasmaOncoticPressure,
          reflection: 1,
          leakage: 1,
          lymphMaximum: 20,
          weight: 18,
        });
        expect(settled.filtration).toBeCloseTo(settled.lymph + settled.overflow, 6);
        expect(settled.lymph).toBeCloseTo(
          regionLymph(region, settled.tissuePressure, { lymphMaximum: 20 }) * lymphAtRest(region, 18),
          9,
        );
      }
});

describe("the course over three weeks", () => {
  const early = answer("extracardiac", CHILD, HARD);
  const late = answer("extracardiac");

  test("without an operation it stays where the steady balance is, and dry", () => {
    const course = solveExchange(late, { operation: false, days: 40 });
    expect(course.daysToDry).toBe(0);
    expect(course.drainedTotal).toBe(0);
    expect(course.filtration.at(-1)! / late.exchange.filtration).toBeGreaterThan(0.9);
    expect(course.filtration.at(-1)! / late.exchange.filtration).toBeLessThan(1.15);
  });

  test("at the Glenn stage the same operation leaves the chest dry", () => {
    expect(solveExchange(answer("glenn")).drainedTotal).toBeLessThan(20);
  });

  test("protein and water lost and not given back thin the plasma and leave the blood", () => {
    const kept = solveExchange(late, { firstDays: early });
    const lost = solveExchange(late, { firstDays: early, replaced: false });
    expect(Math.min(...lost.plasmaOncoticPressure)).toBeLessThan(Math.min(...kept.plasmaOncoticPressure));
    expect(Math.max(...lost.bloodLost)).toBeGreaterThan(20);
    expect(Math.max(...kept.bloodLost)).toBe(0);
  });

  test("without a drain it collects, and lymph's ceiling grows with use", () => {
    const course = solveExchange(late, { firstDays: early, drain: false });
    expect(Math.max(...course.collected)).toBeGreaterThan(100);
    expect(course.lymphCarried.at(-1)!).toBeGreaterThan(course.lymphCarried[0]!);
  });
});

test("lymph empties against the pressure of its vein: a full pathway's holds it up, a duct joined to the atrium frees it (decompression)", () => {
  expect(againstOutflow(4, 20)).toBeGreaterThan(1.5 * againstOutflow(13, 20));
  expect(againstOutflow(13, 10)).toBeCloseTo(againstOutflow(13, 20) / 2, 9);
  const thin = { plasmaOncoticPressure: 20, pulmonaryResistanceIndex: 3 };
  const overflow = (thoracicDuct: string) =>
    answer("extracardiac", CHILD, { ...thin, thoracicDuct }).exchange.overflow;
  expect(overflow("atrium")).toBeLessThan(0.8 * overflow("vein"));
});

describe("lymph against the pressure that it empties into (Drake & Gabel 1990, PMID 2221144, awake sheep, abstract)", () => {
  const mmHg = (cmH2O: number) => cmH2O / 1.35951;

  test("at rest it does not fall while that is below 19 cmH2O", () => {
    for (const region of REGIONS)
      for (const water of [0, 5, 12, 19])
        expect(regionLymph(region, -3, { lymphMaximum: 20, lymphOutflow: mmHg(water) })).toBeCloseTo(1, 1);
  });

  test("in a congested liver 6.2 times rest is carried as far as that plateau, and none against 37 cmH2O", () => {
    expect(againstOutflow(mmHg(19), 20)).toBeGreaterThan(6.1);
    expect(againstOutflow(mmHg(19), 20)).toBeLessThan(6.3);
    expect(againstOutflow(mmHg(37.1), 20)).toBeCloseTo(0, 6);
    expect(againstOutflow(40, 20)).toBe(0);
  });

  test("a duct that lies open carries 12.6 times rest, a twentieth above the most measured, and a child's 3 to 12 times (Dumont; Witte, Circulation 1969;39:723)", () => {
    expect(againstOutflow(0, 20) / 12).toBeCloseTo(1.05, 2);
    const { lymph, lymphHealthy } = solveExchange(answer("extracardiac"));
    expect(Math.max(...lymph) / lymphHealthy).toBeLessThan(12);
    expect(lymph.at(-1)! / lymphHealthy).toBeGreaterThan(3);
  });

  test("against the 14.6 mmHg of pigs whose duct carried 8 to 11 times its first flow, vessels carry less at first and more once they have grown (Front Physiol 2022;13:798284, abstract)", () => {
    const most = { lymphMaximum: 20, lymphOutflow: 14.6 };
    expect(lymphCarried(most)).toBeLessThan(8);
    expect(lymphCarried({ ...most, lymphGrown: 2 })).toBeGreaterThan(11);
  });
});

test("a duct at 30 mmHg carries nothing, and the course keeps its numbers", () => {
  const full = answer("extracardiac", CHILD, { heldAtrialPressure: 20, ...HARD });
  const pressures = { ...full.pressures, svc: 30 };
  const course = solveExchange({ ...full, pressures }, { days: 3 });
  expect(course.lymph.every((flow) => flow === 0)).toBe(true);
  for (const series of Object.values(course).filter(Array.isArray))
    expect(series.every(Number.isFinite)).toBe(true);
  expect(course.drainedTotal).toBeGreaterThan(0);
  expect(course.daysToDry).toBeNull();
});

test("with little protein from the start the course comes to where the steady balance is, not to dryness", () => {
  const leaking = answer("extracardiac", CHILD, { plasmaOncoticPressure: 15 });
  const course = solveExchange(leaking, { operation: false, days: 40 });
  expect(course.daysToDry).toBeNull();
  // Lymph vessels have grown meanwhile, which takes part of it off.
  expect(course.overflow.at(-1)! / leaking.exchange.overflow).toBeGreaterThan(0.3);
  expect(course.overflow.at(-1)! / leaking.exchange.overflow).toBeLessThan(1.1);
});

test("what drains and is not given back leaves the blood, and slows the leak", () => {
  const leaking = answer("extracardiac", CHILD, { plasmaOncoticPressure: 15 });
  const given = solveExchange(leaking, { days: 60, operation: false });
  const lost = solveExchange(leaking, { days: 60, operation: false, replaced: false });
  expect(Math.max(...lost.bloodLost)).toBeGreaterThan(50);
  expect(lost.drainedTotal).toBeLessThan(given.drainedTotal);
});

test("28 mmHg of plasma protein is 4.4 g/dL of albumin, 20 is 3.6 (Landis & Pappenheimer 1963)", () => {
  expect(albuminOf(28)).toBeCloseTo(4.45, 1);
  expect(albuminOf(20)).toBeCloseTo(3.56, 1);
});

test("a Valsalva manoeuvre overflows nothing for good: its exchange is that of rest", () => {
  const strained = answer("extracardiac", CHILD, { breathing: "valsalva" });
  expect(strained.exchange.overflow).toBeCloseTo(answer("extracardiac").exchange.overflow, 6);
});

test("albumin carried back: 31 mL/h of lymph at 1.8 g/dL in a healthy child of 18 kg, and less to each mL as water washes it out", () => {
  const rest = REGIONS.reduce((sum, region) => sum + lymphAtRest(region, 18.3), 0);
  // 0.3 mmHg net of 6.67 mL/min/mmHg in 70 kg
  expect(rest).toBeCloseTo((6.67 * 0.3 * 60 * 18.3) / 70, 6);
  const carried = (ratio: number) =>
    REGIONS.reduce((sum, region) => sum + albuminCarried(region, ratio, 18.3), 0);
  expect(carried(1)).toBeCloseTo((rest * albuminOf(8)) / 100, 9);
  for (let ratio = 1; ratio < 12; ratio++) {
    expect(carried(ratio + 1)).toBeGreaterThan(carried(ratio));
    expect(carried(ratio + 1) / (ratio + 1)).toBeLessThan(carried(ratio) / ratio);
  }
  // The liver's sinusoids hold no protein back.
  const liver = REGIONS.find(({ name }) => name === "liver")!;
  expect(albuminCarried(liver, 6, 18.3)).toBeCloseTo(6 * albuminCarried(liver, 1, 18.3), 9);
  const course = solveExchange(answer("extracardiac"));
  expect(course.lymphHealthy).toBeCloseTo(rest, 0);
  expect(course.albumin).toHaveLength(course.days.length);
  expect(course.drainedPerKilogram).toBeCloseTo(course.drainedTotal / 18.3, 1);
});
