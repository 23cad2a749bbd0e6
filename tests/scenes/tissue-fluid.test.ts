import { expect, test, vi } from "vitest";
import type { DayFigures } from "../../src/scenes/exchange/day.ts";
import { showArrows, showDrops, toCavity, toLymph } from "../../src/scenes/exchange/fluid-drops.ts";
import { levelAt } from "../../src/scenes/exchange/fluid-gauge.ts";
import type { Marks } from "../../src/scenes/exchange/marks.ts";
import { CAPILLARY, LUMEN, tissuePlan, WALL } from "../../src/scenes/exchange/tissue-plan.ts";
import { darkTheme } from "../../src/scenes/theme/theme.ts";

vi.mock("pixi.js", () => ({}));

const plan = tissuePlan(1000);
const theme = darkTheme(String);
type Shown = Parameters<Marks["show"]>[0];

function shown(show: (into: Marks) => void): Shown {
  let last: Shown = [];
  show({ show: (marks: Shown) => (last = marks) } as unknown as Marks);
  return last;
}
const figures: DayFigures = {
  filtration: 160,
  lymph: 120,
  overflow: 40,
  drained: 20,
  collected: 10,
  interstitialPressure: 0,
};
const arrows = (of: Partial<DayFigures>) =>
  shown((into) => showArrows(into, plan, { figures: { ...figures, ...of }, drop: 10 }, theme));
/** Area of those that point down at the capillary's wall. */
const area = (marks: Shown) =>
  marks
    .filter(({ y }) => y < Math.max(...CAPILLARY.y) + LUMEN + 120)
    .reduce((sum, { size = 0 }) => sum + size ** 2, 0);

test("each of the day's flows has its drops, in proportion", () => {
  const water = { figures, drop: 10, level: 800, time: 3 };
  expect(shown((into) => showDrops(into, plan, water, theme))).toHaveLength(12 + 4 + 2);
  const none = { ...figures, lymph: 0, overflow: 0, drained: 0 };
  expect(shown((into) => showDrops(into, plan, { ...water, figures: none }, theme))).toHaveLength(0);
});

test("an arrow's area follows its flow, and it turns round where water is taken up", () => {
  expect(area(arrows({ filtration: 320 })) / area(arrows({}))).toBeCloseTo(2, 6);
  const [out, back] = [arrows({}), arrows({ filtration: -160 })].map((each) => each[0]!.angle);
  expect(Math.abs(back! - out!)).toBeCloseTo(Math.PI, 9);
});

test("a drop goes without a leap from the capillary's cleft through tissue and lymph out of the picture", () => {
  for (let index = 0; index < 12; index++) {
    let last = toLymph(plan, index, 0);
    expect(last[1]).toBeLessThan(Math.max(...CAPILLARY.y) + LUMEN + WALL + 50);
    for (let phase = 0.002; phase <= 1; phase += 0.002) {
      const next = toLymph(plan, index, phase);
      expect(Math.hypot(next[0] - last[0], next[1] - last[1]), `${index} at ${phase}`).toBeLessThan(26);
      last = next;
    }
    expect(last[0]).toBeLessThan(0);
    expect(toCavity(plan, index, 1, 900)[1]).toBe(900);
  }
});

test("the cavity's level rises in proportion to what has collected, to its scale's end", () => {
  const rise = (millilitres: number) => levelAt(plan, 0, 50) - levelAt(plan, millilitres, 50);
  expect(rise(40)).toBeCloseTo(2 * rise(20), 9);
  expect(rise(90)).toBe(rise(50));
  expect(levelAt(plan, 50, 50)).toBeGreaterThan(plan.cavity.top);
});
