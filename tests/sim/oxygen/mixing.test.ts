import { expect, test } from "vitest";
import { tensionAtSaturation } from "../../../src/sim/oxygen/content.ts";
import { type MixingRequest, mixOxygen } from "../../../src/sim/oxygen/mixing.ts";
import { regionalUse } from "../../../src/sim/oxygen/use.ts";

const WHOLE: MixingRequest = {
  flows: {
    upper: 1,
    lower: 1.2,
    coronary: 0.07,
    collaterals: 0,
    lungs: 2.27,
    fenestrationForward: 0,
    fenestrationBackward: 0,
  },
  lowerPassesLungs: true,
  coronaryPassesLungs: true,
  haemoglobin: 14,
  lungTension: 92,
  use: { upper: 40, lower: 50, coronary: 6 },
};

test("with every vein's blood through the lungs the arteries carry what the pulmonary veins do", () => {
  const balance = mixOxygen(WHOLE);
  expect(balance.arterial).toBeCloseTo(balance.pulmonaryVein, 9);
});

test("what is used is what the arteries bring less what the veins take back (Fick)", () => {
  const balance = mixOxygen({
    ...WHOLE,
    flows: { ...WHOLE.flows, fenestrationForward: 0.5, lungs: 1.77 },
  });
  expect(balance.used).toBeCloseTo(96, 6);
  expect(balance.missing).toBeCloseTo(0, 6);
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

test("organs that ask for more than arrives get what there is, and the rest is told", () => {
  const balance = mixOxygen({ ...WHOLE, use: { upper: 400, lower: 50, coronary: 6 } });
  expect(balance.upper).toBeCloseTo(0, 6);
  expect(balance.missing).toBeGreaterThan(150);
});

test("the shares of use add up at rest and in exertion", () => {
  for (const equivalents of [1, 4, 10]) {
    const { upper, lower, coronary } = regionalUse(94, equivalents);
    expect(upper + lower + coronary).toBeCloseTo(94 * equivalents, 9);
  }
});

test("before completion: 3.17 L/min/m2 of which 0.45 from above, collaterals 1.2, 150 mL/min/m2 and 16.5 g/dL give 82.8 % (arithmetic of physiology values, section 2)", () => {
  const { arterial } = mixOxygen({
    ...WHOLE,
    haemoglobin: 16.5,
    lowerPassesLungs: false,
    coronaryPassesLungs: false,
    lungTension: tensionAtSaturation(0.97),
    flows: {
      ...WHOLE.flows,
      upper: 0.45 * 3.17,
      lower: 0.55 * 3.17,
      coronary: 0,
      collaterals: 1.2,
      lungs: 0.45 * 3.17 + 1.2,
    },
    use: { upper: 0.45 * 150, lower: 0.55 * 150, coronary: 0 },
  });
  // The formula leaves dissolved oxygen out.
  expect(Math.abs(100 * arterial - 82.8)).toBeLessThan(1);
});
