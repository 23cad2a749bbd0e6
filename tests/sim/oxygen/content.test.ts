import { expect, test } from "vitest";
import {
  alveolarCarbonDioxide,
  barometricPressure,
  pulmonaryVeinTension,
} from "../../../src/sim/oxygen/alveolar.ts";
import { contentOf, saturationOf, tensionAtSaturation, tensionOf } from "../../../src/sim/oxygen/content.ts";
import { request } from "../circulation/requests.ts";

test.each([
  [20, 31.98],
  [26.86, 50.0],
  [30, 57.38],
  [40, 74.95],
  [60, 90.58],
  [75, 94.87],
  [100, 97.75],
])(
  "at %d mmHg the blood is %d %% saturated (Severinghaus, J Appl Physiol 1979;46:599)",
  (tension, percent) => {
    expect(Math.abs(100 * saturationOf(tension) - percent)).toBeLessThan(0.02);
  },
);

test("content with 14 g/dL: 18.48 mL/dL at 95 mmHg and 97 %, 16.48 at 53 mmHg and 87 % (arithmetic; 1.34 and 0.003 from textbooks)", () => {
  for (const [tension, saturation, content] of [
    [95, 0.97, 18.48],
    [53, 0.87, 16.48],
  ] as const) {
    const bound = contentOf(tension, 14) - 0.003 * tension;
    const atSaturation = bound * (saturation / saturationOf(tension)) + 0.003 * tension;
    expect(Math.abs(atSaturation - content)).toBeLessThan(0.01);
  }
});

test("tension and saturation are found back from content and curve", () => {
  for (const tension of [5, 20, 40, 60, 95, 300]) {
    expect(tensionOf(contentOf(tension, 14), 14)).toBeCloseTo(tension, 6);
    if (tension < 200) expect(tensionAtSaturation(saturationOf(tension))).toBeCloseTo(tension, 6);
  }
});

test("air at sea level fills the pulmonary vein to 97 % (physiology values, section 5)", () => {
  expect(100 * saturationOf(pulmonaryVeinTension(request("extracardiac")))).toBeCloseTo(97, 0);
});

test("the standard atmosphere at 2400 m is 567 mmHg (ISO 2533)", () => {
  expect(barometricPressure(2400)).toBeCloseTo(567.4, 0);
});

test("at height breathing rises and carbon dioxide falls: some 34 mmHg at 3,500 m, 30 at 5,000 (West, from memory), 40 below", () => {
  const at = (altitude: number) => alveolarCarbonDioxide(request("two-ventricle", undefined, { altitude }));
  expect(at(0)).toBeCloseTo(40, 0);
  expect(at(3500)).toBeGreaterThan(31);
  expect(at(3500)).toBeLessThan(36);
  expect(at(5000)).toBeGreaterThan(26);
  expect(at(5000)).toBeLessThan(32);
});

test("blood without oxygen tension holds none", () => {
  expect([saturationOf(0), saturationOf(-5)]).toEqual([0, 0]);
});
