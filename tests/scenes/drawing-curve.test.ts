import { expect, test } from "vitest";
import { curve, placeOn } from "../../src/scenes/drawing/curve-drawing.ts";
import { meanOf, passage, phaseOf, valueAt } from "../../src/scenes/drawing/trace-clock.ts";

test("a curve passes through its ends and keeps the length of a straight line", () => {
  const line = curve([
    [0, 0],
    [30, 40],
    [60, 80],
  ]);
  expect(line.length).toBeCloseTo(100, 6);
  expect([line.x[0], line.y[0]]).toEqual([0, 0]);
  expect([line.x.at(-1), line.y.at(-1)]).toEqual([60, 80]);
});

test("a curve whose ends meet has no corner there", () => {
  const ring = curve(
    [
      [100, 0],
      [0, 100],
      [-100, 0],
      [0, -100],
      [100, 0],
    ],
    1,
  );
  const last = ring.x.length - 1;
  const out = [ring.x[1]! - ring.x[0]!, ring.y[1]! - ring.y[0]!];
  const back = [ring.x[last]! - ring.x[last - 1]!, ring.y[last]! - ring.y[last - 1]!];
  const cosine = (out[0]! * back[0]! + out[1]! * back[1]!) / (Math.hypot(...out) * Math.hypot(...back));
  expect(cosine).toBeGreaterThan(0.97);
});

test("equal fractions of a bent curve are equally far apart, so that even flow looks even", () => {
  const line = curve(
    [
      [0, 0],
      [10, 0],
      [120, 60],
      [130, 300],
    ],
    2,
  );
  const a = new Float64Array(4);
  const b = new Float64Array(4);
  const steps: number[] = [];
  for (let i = 0; i < 40; i++) {
    placeOn(line, i / 40, a);
    placeOn(line, (i + 1) / 40, b);
    steps.push(Math.hypot(b[0]! - a[0]!, b[1]! - a[1]!));
  }
  expect(Math.max(...steps) / Math.min(...steps)).toBeLessThan(1.06);
});

test("the tangent is a unit vector along the way", () => {
  const out = new Float64Array(4);
  placeOn(
    curve([
      [0, 0],
      [100, 0],
    ]),
    0.4,
    out,
  );
  expect(Array.from(out)).toEqual([40, 0, 1, 0]);
});

const time = Float64Array.from({ length: 401 }, (_, i) => (i / 400) * 3);
const clock = { time, period: 3 };
const flow = Float64Array.from(time, (t) => 2 + 3 * Math.sin((2 * Math.PI * t) / 3));

test("what passes in ten repeats is ten times the mean flow, and the phase only moves it about", () => {
  const blood = passage(clock, flow);
  expect(blood.passed(30)).toBeCloseTo((2 * 1000 * 30) / 60, 6);
  expect(meanOf(clock, flow)).toBeCloseTo(2, 9);
  const exact = (t: number) =>
    (1000 / 60) * (2 * t + (9 / (2 * Math.PI)) * (1 - Math.cos((2 * Math.PI * t) / 3)));
  for (const t of [0.2, 1.1, 2.9, 4.4, 17.3]) expect(blood.passed(t)).toBeCloseTo(exact(t), 2);
});

test("blood that runs backward is taken back", () => {
  const blood = passage(clock, flow);
  expect(blood.passed(2.5)).toBeLessThan(blood.passed(1.95));
});

test("a trace is read on the running clock, before zero and after many repeats", () => {
  expect(phaseOf(clock, -0.5)).toBeCloseTo(2.5, 12);
  expect(valueAt(clock, flow, 0.75)).toBeCloseTo(5, 3);
  expect(valueAt(clock, flow, 300.75)).toBeCloseTo(5, 3);
  expect(valueAt(clock, flow, -2.25)).toBeCloseTo(5, 3);
});
