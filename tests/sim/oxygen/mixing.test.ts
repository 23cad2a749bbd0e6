import { expect, test } from "vitest";
import { contentOf, tensionAtSaturation } from "../../../src/sim/oxygen/content.ts";
import { type MixingRequest, mixOxygen } from "../../../src/sim/oxygen/mixing.ts";
import { MIN_SATURATION, organUse } from "../../../src/sim/oxygen/use.ts";

const WHOLE: MixingRequest = {
  flows: {
    upper: 1,
    kidneys: 0.4,
    gut: 0.4,
    legs: 0.4,
    coronary: 0.07,
    venoVenous: 0,
    collaterals: 0,
    lungs: 2.27,
    fenestrationForward: 0,
    fenestrationBackward: 0,
  },
  lowerPassesLungs: true,
  coronaryPassesLungs: true,
  haemoglobin: 14,
  lungTension: 92,
  lungShunt: 0,
  use: { upper: 40, kidneys: 10, gut: 20, legs: 20, coronary: 6 },
};

test("with every vein's blood through the lungs the arteries carry what the pulmonary veins do", () => {
  const balance = mixOxygen(WHOLE);
  expect(balance.arterial).toBeCloseTo(balance.pulmonaryVein, 9);
});

test("oxygen used is what the arteries carry less what the veins carry (Fick)", () => {
  const balance = mixOxygen({
    ...WHOLE,
    flows: { ...WHOLE.flows, fenestrationForward: 0.5, lungs: 1.77 },
  });
  expect(balance.used).toBeCloseTo(96, 6);
  expect(balance.missing).toBeCloseTo(0, 6);
  expect(Object.values(balance.drawn).reduce((sum, each) => sum + each, 0)).toBeCloseTo(balance.used, 6);
  expect(balance.lower).toBeLessThan(balance.arterial);
  expect(balance.delivery * balance.extraction).toBeCloseTo(balance.used, 6);
});

test("the shunt law: arterial content is the flow-weighted mean of lung and shunted blood", () => {
  const flows = { ...WHOLE.flows, fenestrationForward: 0.5, lungs: 1.77 };
  const { arterial, pulmonaryVein, mixedVenous } = mixOxygen({ ...WHOLE, flows });
  const content = (saturation: number) => 1.34 * 14 * saturation;
  const mixed = (1.77 * content(pulmonaryVein) + 0.5 * content(mixedVenous)) / 2.27;
  expect(content(arterial)).toBeCloseTo(mixed, 0);
});

test("organs that ask for more than they can draw out get that, and the rest is reported as missing", () => {
  const balance = mixOxygen({ ...WHOLE, use: { ...WHOLE.use, upper: 400 } });
  expect(balance.upper).toBeCloseTo(MIN_SATURATION.upper, 6);
  expect(balance.missing).toBeGreaterThan(150);
});

test("blood that passes the lungs without air, or goes round them by veno-venous channels, lowers the arteries by the shunt law", () => {
  const mix = (changes: Partial<MixingRequest>) => mixOxygen({ ...WHOLE, ...changes });
  const content = (saturation: number) => contentOf(tensionAtSaturation(saturation), 14);
  const fistula = mix({ lungShunt: 0.1 });
  expect(content(fistula.arterial)).toBeCloseTo(
    0.9 * contentOf(92, 14) + 0.1 * content(fistula.pulmonaryArtery),
    6,
  );
  const channel = mix({ flows: { ...WHOLE.flows, venoVenous: 0.2, lungs: 2.07 } });
  expect(content(channel.arterial)).toBeCloseTo(
    (2.07 * content(channel.pulmonaryVein) + 0.2 * content(channel.upper)) / 2.27,
    6,
  );
});

test("the shares of use add up at rest and in exertion", () => {
  for (const equivalents of [1, 4, 10]) {
    const sum = Object.values(organUse(94, equivalents)).reduce((total, use) => total + use, 0);
    expect(sum).toBeCloseTo(94 * equivalents, 9);
  }
});

test("at the Glenn stage: 3.17 L/min/m2 of which 0.45 from above, collaterals 1.2, 150 mL/min/m2 and 16.5 g/dL give 82.8 % (arithmetic of physiology values, section 2)", () => {
  const { arterial } = mixOxygen({
    ...WHOLE,
    haemoglobin: 16.5,
    lowerPassesLungs: false,
    coronaryPassesLungs: false,
    lungTension: tensionAtSaturation(0.97),
    flows: {
      ...WHOLE.flows,
      upper: 0.45 * 3.17,
      kidneys: 0,
      gut: 0,
      legs: 0.55 * 3.17,
      coronary: 0,
      collaterals: 1.2,
      lungs: 0.45 * 3.17 + 1.2,
    },
    use: { upper: 0.45 * 150, kidneys: 0, gut: 0, legs: 0.55 * 150, coronary: 0 },
  });
  // The formula leaves dissolved oxygen out.
  expect(Math.abs(100 * arterial - 82.8)).toBeLessThan(1);
});

test.each([
  [true, true],
  [true, false],
  [false, true],
  [false, false],
])(
  "what meets before the lungs and in the ventricle is weighed by its flow (lower through the lungs: %s, coronary: %s)",
  (lowerPassesLungs, coronaryPassesLungs) => {
    const flows = {
      upper: 1,
      kidneys: 0.4,
      gut: 0.5,
      legs: 0.3,
      coronary: 0.3,
      venoVenous: 0,
      collaterals: 0.2,
      lungs: 1.5,
      fenestrationForward: 0.4,
      fenestrationBackward: 0.1,
    };
    const LOWER = flows.kidneys + flows.gut + flows.legs;
    const found = mixOxygen({ ...WHOLE, flows, lowerPassesLungs, coronaryPassesLungs });
    const content = (saturation: number) => contentOf(tensionAtSaturation(saturation), WHOLE.haemoglobin);
    const mean = (parts: readonly (readonly [number, number])[]) =>
      parts.reduce((sum, [flow, saturation]) => sum + flow * content(saturation), 0) /
      parts.reduce((sum, [flow]) => sum + flow, 0);
    const before = (own: boolean) => [
      ...(lowerPassesLungs === own ? [[LOWER, found.lower] as const] : []),
      ...(coronaryPassesLungs === own ? [[flows.coronary, found.coronary] as const] : []),
    ];
    const joint = mean([
      [flows.upper, found.upper],
      ...before(true),
      [flows.fenestrationBackward, found.arterial],
    ]);
    const share = flows.collaterals / flows.lungs;
    expect(content(found.pulmonaryArtery)).toBeCloseTo(
      (1 - share) * joint + share * content(found.arterial),
      6,
    );
    const direct = before(false);
    const total = flows.lungs + flows.fenestrationForward + direct.reduce((sum, [flow]) => sum + flow, 0);
    const carried =
      flows.lungs * content(found.pulmonaryVein) +
      flows.fenestrationForward * joint +
      direct.reduce((sum, [flow, saturation]) => sum + flow * content(saturation), 0);
    expect(content(found.arterial)).toBeCloseTo(carried / total, 6);
    expect(content(found.mixedVenous)).toBeCloseTo(
      mean([
        [flows.upper, found.upper],
        [LOWER, found.lower],
        [flows.coronary, found.coronary],
      ]),
      6,
    );
    expect(found.delivery).toBeCloseTo(content(found.arterial) * 25, 5);
    expect(found.missing).toBeCloseTo(0, 6);
  },
);

test("collaterals above the lungs' total flow fill them alone, without a division by 0", () => {
  const flooded = mixOxygen({ ...WHOLE, flows: { ...WHOLE.flows, lungs: 0.5, collaterals: 0.8 } });
  expect(flooded.pulmonaryArtery).toBeCloseTo(flooded.arterial, 9);
  const still = mixOxygen({
    ...WHOLE,
    flows: {
      upper: 0,
      kidneys: 0,
      gut: 0,
      legs: 0,
      coronary: 0,
      venoVenous: 0,
      collaterals: 0,
      lungs: 0,
      fenestrationForward: 0,
      fenestrationBackward: 0,
    },
  });
  for (const value of Object.values({ ...still, ...still.organs, ...still.drawn, drawn: 0, organs: 0 }))
    expect(value).toBeGreaterThanOrEqual(0);
  expect(still).toMatchObject({ extraction: 0, delivery: 0, missing: 96 });
});

test("at rest the upper body uses 44 % and the heart 7 % of 100 mL/min; exertion is the legs' and the heart's, four- to fivefold at 10 MET", () => {
  const { upper, coronary, kidneys, gut, legs } = organUse(100, 1);
  expect([upper, coronary, kidneys, gut, legs].map(Math.round)).toEqual([44, 7, 7, 25, 17]);
  const hard = organUse(100, 10);
  expect([hard.upper, hard.kidneys, hard.gut]).toEqual([upper, kidneys, gut]);
  expect(hard.coronary / coronary).toBeGreaterThan(4);
  expect(hard.coronary / coronary).toBeLessThan(6);
});
