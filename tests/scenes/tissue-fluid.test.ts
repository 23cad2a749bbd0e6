import { expect, test, vi } from "vitest";
import type { DayFigures } from "../../src/scenes/exchange/day.ts";
import {
  leakedProteins,
  showArrows,
  showDrops,
  toCavity,
  toLymph,
} from "../../src/scenes/exchange/fluid-drops.ts";
import { levelAt } from "../../src/scenes/exchange/fluid-gauge.ts";
import type { Marks } from "../../src/scenes/exchange/marks.ts";
import { apart } from "../../src/scenes/exchange/tissue-cells.ts";
import {
  BREAK,
  CAPILLARY,
  CLEFTS,
  LUMEN,
  LYMPH_HALF,
  tissuePlan,
  WALL,
  WIDTH,
} from "../../src/scenes/exchange/tissue-plan.ts";
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
  albumin: 1.8,
  drained: 20,
  collected: 10,
  interstitialPressure: 0,
  ductPressure: 15,
  lymphCarried: 6,
};
const tissue = { size: 1.08, along: [90, 70, 60, 50, 40, 30, 20, 15, 10] };
const arrows = (of: Partial<DayFigures>, along = tissue.along) =>
  shown((into) => showArrows(into, plan, { figures: { ...figures, ...of }, drop: 10, along }, theme));
/** Before those at the gaps stand the lymph vessels' own. */
const BEFORE_GAPS = CLEFTS.length + plan.initial.length + 2;

test("each of the day's flows has its drops, in proportion", () => {
  const water = { figures, drop: 10, level: 800, time: 3, ...tissue };
  expect(shown((into) => showDrops(into, plan, water, theme))).toHaveLength(12 + 4 + 2);
  const none = { ...figures, lymph: 0, overflow: 0, drained: 0 };
  expect(shown((into) => showDrops(into, plan, { ...water, figures: none }, theme))).toHaveLength(0);
});

test("albumin that lymph carries back goes with it as gold, in proportion, and none without", () => {
  const water = { figures, drop: 10, level: 800, time: 3, ...tissue };
  const gold = leakedProteins(plan, water, theme);
  // A piece for each 0.06 g/h and mL/h of a drop: 1.8 / 0.6.
  expect(gold).toHaveLength(3);
  expect(leakedProteins(plan, { ...water, figures: { ...figures, albumin: 3.6 } }, theme)).toHaveLength(6);
  expect(leakedProteins(plan, { ...water, figures: { ...figures, albumin: 0 } }, theme)).toHaveLength(0);
  const later = leakedProteins(plan, { ...water, time: 3.01 }, theme);
  gold.forEach(({ x, y }, i) => {
    expect(Math.hypot(later[i]!.x - x, later[i]!.y - y)).toBeGreaterThan(0);
    expect(Math.hypot(later[i]!.x - x, later[i]!.y - y)).toBeLessThan(30);
  });
});

test("an arrow in the collecting vessel points downstream, as its valves' leaflets narrow", () => {
  const { x, y, angle } = arrows({})[BEFORE_GAPS - 1]!;
  const near = plan.lymph.x.findIndex((each, i) => Math.hypot(each - x, plan.lymph.y[i]! - y) < 4);
  const [dx, dy] = [
    plan.lymph.x[near + 2]! - plan.lymph.x[near]!,
    plan.lymph.y[near + 2]! - plan.lymph.y[near]!,
  ];
  expect(Math.cos(angle) * dx + Math.sin(angle) * dy).toBeGreaterThan(0.9 * Math.hypot(dx, dy));
  expect(arrows({ lymph: 0 })).toHaveLength(arrows({}).length - plan.initial.length - 2);
});

/** Those at the capillary's wall come first. */
const atWall = (marks: Shown) => marks.slice(0, CLEFTS.length);

test("water leaves through both walls of the capillary, and turns round where it is taken up", () => {
  const [whole, back] = [1, -1].map((factor) =>
    atWall(
      arrows(
        {},
        tissue.along.map((flow) => factor * flow),
      ),
    ),
  ) as readonly Shown[] as readonly [Shown, Shown];
  const sizes = whole.map(({ size }) => size!);
  expect(sizes).toEqual(sizes.toSorted((a, b) => b - a));
  whole.forEach(({ angle, y }, i) => {
    const { side } = CLEFTS[i]!;
    expect(Math.sin(angle)).toBeCloseTo(side, 9);
    expect(side * (y - CAPILLARY.y[0]!)).toBeGreaterThan(0);
    expect(Math.abs(back[i]!.angle - angle)).toBeCloseTo(Math.PI, 9);
  });
});

test("any arrow is long enough to be seen, and longer by the root of its flow", () => {
  const size = (overflow: number) => over(overflow)[0]!.size!;
  const over = (overflow: number) =>
    arrows({ overflow }).slice(BEFORE_GAPS, BEFORE_GAPS + plan.cavity.gaps.length);
  expect(size(1)).toBeGreaterThan(0.3);
  const none = size(1e-9 + 0.6001);
  expect((size(400) - none) / (size(100) - none)).toBeGreaterThan(2);
  expect(arrows({ overflow: 0 })).toHaveLength(arrows({ overflow: 40 }).length - plan.cavity.gaps.length);
});

test.each([880, 1000, 1240])(
  "in a plan %i high what runs over comes out of the tissue's fluid, not out of the lymph vessel, and goes through the lining",
  (high) => {
    const tall = tissuePlan(high);
    let boxes: ReturnType<typeof showArrows> = [];
    const marks = shown((into) => {
      boxes = showArrows(into, tall, { figures, drop: 10, along: tissue.along }, theme);
    });
    const through = boxes.slice(BEFORE_GAPS, BEFORE_GAPS + tall.cavity.gaps.length);
    expect(boxes).toHaveLength(marks.length);
    for (const { x, y, width, height } of through) {
      const under = Array.from(tall.lymph.x, (at, i) => [at, tall.lymph.y[i]!] as const)
        .filter(([at]) => Math.abs(at - x - width / 2) < 60)
        .map(([, middle]) => middle + LYMPH_HALF);
      expect(y).toBeGreaterThan(Math.max(...under));
      expect(y).toBeLessThan(tall.cavity.top - 30);
      expect(y + height).toBeGreaterThan(tall.cavity.top - 4);
      expect(y + height).toBeLessThan(tall.cavity.gap);
    }
  },
);

test("a drop goes without a leap from the capillary's cleft through tissue and lymph out of the picture", () => {
  for (let index = 0; index < 12; index++) {
    let last = toLymph(plan, tissue, index, 0);
    expect(Math.abs(last[1] - CAPILLARY.y[0]!)).toBeLessThan(LUMEN + WALL + 60);
    for (let phase = 0.002; phase <= 1; phase += 0.002) {
      const next = toLymph(plan, tissue, index, phase);
      expect(Math.hypot(next[0] - last[0], next[1] - last[1]), `${index} at ${phase}`).toBeLessThan(30);
      last = next;
    }
    expect(last[0]).toBeLessThan(0);
    expect(toCavity(plan, tissue, index, 1, 900)[1]).toBeCloseTo(900, 6);
  }
});

test.each([1, 1.08, 1.2])(
  "drops keep off the cells that they pass between, in a tissue of size %f",
  (size) => {
    // Behind a lymph vessel, or beyond the picture's borders.
    const hidden = (x: number, y: number) =>
      x < 0 ||
      x > WIDTH ||
      y < 0 ||
      [plan.lymph, ...[...plan.initial, ...plan.buds].map(({ line }) => line)].some((line) =>
        line.x.some((each, i) => Math.hypot(each - x, line.y[i]! - y) < 90),
      );
    let met = 0;
    let all = 0;
    for (let index = 0; index < 60; index++)
      for (const at of [
        (share: number) => toLymph(plan, { ...tissue, size }, index, 0.45 * share),
        (share: number) => toCavity(plan, { ...tissue, size }, index, 0.7 * share, 900),
      ])
        for (let share = 0.05; share <= 1; share += 0.02) {
          const [x, y] = at(share);
          if (hidden(x, y)) continue;
          all++;
          const cell = plan.cells.some(({ at: middle, half, turn }) => {
            const [dx, dy] = [x - apart(middle, size)[0], y - apart(middle, size)[1]];
            const [u, v] = [
              dx * Math.cos(turn) + dy * Math.sin(turn),
              dy * Math.cos(turn) - dx * Math.sin(turn),
            ];
            return Math.hypot(u / half[0], v / half[1]) < 1;
          });
          if (cell) met++;
        }
    expect(all).toBeGreaterThan(1800);
    expect(met / all).toBeLessThan(0.02);
  },
);

test("the cavity's level rises in proportion to what has collected, to its scale's end", () => {
  const rise = (millilitres: number) => levelAt(plan, 0, 50) - levelAt(plan, millilitres, 50);
  expect(rise(40)).toBeCloseTo(2 * rise(20), 9);
  expect(rise(90)).toBe(rise(50));
  expect(levelAt(plan, 50, 50)).toBeGreaterThan(plan.cavity.gap + BREAK);
});
