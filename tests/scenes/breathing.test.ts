// @vitest-environment happy-dom
import type { Graphics } from "pixi.js";
import { expect, test } from "vitest";
import { drawArrows } from "../../src/scenes/breathing/arrows.ts";
import { doingAt, fillings } from "../../src/scenes/breathing/chest.ts";
import { drawnLarger, largerOf } from "../../src/scenes/breathing/larger.ts";
import { lungSize, stretchTrace } from "../../src/scenes/breathing/lung-stretch.ts";
import { darkTheme } from "../../src/scenes/theme/theme.ts";
import type { Traces } from "../../src/sim/circulation/answer/answer.ts";
import { solve } from "../../src/sim/circulation/solve.ts";
import { START } from "../../src/state/scene-state.ts";

const time = Float64Array.from({ length: 601 }, (_, i) => (i / 600) * 4);
/** Filled over the first 40 % of four seconds, emptied over the rest. */
const filled = Float64Array.from(time, (t) =>
  t < 1.6 ? 0.5 - 0.5 * Math.cos((Math.PI * t) / 1.6) : 0.5 + 0.5 * Math.cos((Math.PI * (t - 1.6)) / 2.4),
);
const traces = (pressures: Record<string, Float64Array>): Traces => ({
  time,
  period: 4,
  heartPeriod: 0.5,
  pressures,
  flows: {},
  volumes: {},
});
const spontaneous = traces({ pleural: filled.map((f) => -3.7 - 2 * f) });
const ventilator = traces({
  pleural: filled.map((f) => -3.7 + 6 * f),
  alveolar: filled.map((f) => 4 + 12 * f),
});
const valsalva = traces({ pleural: filled.map(() => 30), alveolar: filled.map(() => 34.7) });

test("lungs widen as a breath is drawn, and also when a ventilator pushes it in although the pressure around them rises", () => {
  for (const each of [spontaneous, ventilator]) {
    const stretch = stretchTrace(each)!;
    expect(lungSize(stretch[240]!)).toBeGreaterThan(lungSize(stretch[0]!));
    const [fill, ...more] = fillings(each);
    expect(more).toEqual([]);
    expect(fill!.from).toBeCloseTo(0, 1);
    expect(fill!.to).toBeCloseTo(1.6, 1);
  }
});

test("a quiet breath widens the lungs by about 6 percent: half a litre on two and a half (textbook volumes)", () => {
  const stretch = stretchTrace(spontaneous)!;
  expect(lungSize(stretch[240]!) / lungSize(stretch[0]!)).toBeCloseTo((3 / 2.5) ** (1 / 3), 2);
});

test("a Valsalva manoeuvre presses on the lungs without filling them", () => {
  expect(fillings(valsalva)).toEqual([]);
  expect(lungSize(stretchTrace(valsalva)![0]!)).toBeCloseTo(1, 2);
});

test("the text on the chest follows the pattern and the moment", () => {
  expect(doingAt(spontaneous, "spontaneous", 0.8)).toBe("in");
  expect(doingAt(spontaneous, "deep", 4 * 7 + 3)).toBe("out");
  expect(doingAt(ventilator, "ventilator", 0.8)).toBe("ventilatorIn");
  expect(doingAt(valsalva, "valsalva", 0.8)).toBe("valsalva");
  expect(doingAt(traces({}), "held", 0.8)).toBe("held");
});

test("the chest rests between two breaths, after breathing out alone", () => {
  const held = traces({ pleural: filled.map((f, i) => (time[i]! > 3 ? -3.7 : -3.7 - 2 * f)) });
  expect(doingAt(held, "spontaneous", 3.6)).toBe("pause");
  expect(doingAt(held, "spontaneous", 1.6)).not.toBe("pause");
});

test("a quiet breath is drawn larger than it is, one that would then pass a deep one as it is", () => {
  const drawn = (breathing: string) => largerOf(solve({ ...START.request, set: { breathing } }).traces);
  expect(drawn("spontaneous")).toBe(2);
  expect(drawn("deep")).toBe(1);
  expect(drawnLarger(1.1, 2)).toBeCloseTo(1.2, 9);
  expect(drawnLarger(1, 2)).toBe(1);
});

test("the model's own traces widen the lungs in inspiration, by its effort or by a ventilator's", () => {
  for (const breathing of ["spontaneous", "deep", "ventilator"]) {
    const { traces } = solve({ ...START.request, set: { breathing } });
    expect(traces.pressures.alveolar).toBeDefined();
    const [fill, ...more] = fillings(traces);
    expect(more, breathing).toEqual([]);
    expect(doingAt(traces, breathing, (fill!.from + fill!.to) / 2)).toBe(
      breathing === "ventilator" ? "ventilatorIn" : "in",
    );
  }
});

test("arrows at wall and diaphragm point out and down while the lungs fill, and back while they empty", () => {
  const circulation = solve({ ...START.request, set: { breathing: "spontaneous" } });
  const [fill] = fillings(circulation.traces);
  const heads = (time: number) => {
    const found: (readonly number[])[] = [];
    const ink = {
      clear: () => ink,
      moveTo: () => ink,
      lineTo: () => ink,
      stroke: () => ink,
      fill: () => ink,
      poly: (points: readonly number[]) => {
        found.push(points);
        return ink;
      },
    };
    drawArrows(ink as unknown as Graphics, circulation, time, darkTheme(String));
    // The tip, and the middle of its base.
    return found.map(([tx = 0, ty = 0, ax = 0, ay = 0, bx = 0, by = 0]) => ({
      x: tx,
      across: tx - (ax + bx) / 2,
      down: ty - (ay + by) / 2,
    }));
  };
  const middle = (fill!.from + fill!.to) / 2;
  for (const [time, sign] of [
    [middle, 1],
    [fill!.to + 0.4 * (fill!.to - fill!.from), -1],
  ] as const) {
    const all = heads(time);
    const level = all.filter(({ across, down }) => Math.abs(across) > Math.abs(down));
    expect(level.length).toBeGreaterThanOrEqual(4);
    for (const { x, across } of level) expect(Math.sign(across)).toBe(sign * Math.sign(x - 500));
    // Those of the great veins stand in the middle.
    const upright = all.filter((each) => !level.includes(each) && Math.abs(each.x - 500) > 100);
    expect(upright.length).toBeGreaterThanOrEqual(2);
    for (const { down } of upright) expect(Math.sign(down)).toBe(sign);
  }
});
