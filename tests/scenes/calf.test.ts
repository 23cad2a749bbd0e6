import { expect, test } from "vitest";
import { bloodColumn } from "../../src/scenes/calf/blood-column.ts";
import {
  ACHILLES_TENDON,
  CALCANEUS,
  GASTROCNEMIUS,
  SKIN,
  SOLEUS,
  TIBIA,
} from "../../src/scenes/calf/leg-parts.ts";
import { outlineOf } from "../../src/scenes/calf/rounded.ts";
import { calfDoing, squeezes } from "../../src/scenes/calf/squeezes.ts";
import {
  CALF,
  freeHalfWidth,
  halfWidth,
  leafletBase,
  leaflets,
  PLANE,
  squeezeAt,
  VALVES,
} from "../../src/scenes/calf/vein.ts";
import type { Traces } from "../../src/sim/circulation/answer.ts";

const time = Float64Array.from({ length: 401 }, (_, i) => (i / 400) * 2);
const wave = (value: (phase: number) => number) => Float64Array.from(time, (t) => value(2 * Math.PI * t));
/** One contraction a second; the veins lose while it squeezes and gain between, 0.6 L/min on average. */
const traces: Traces = {
  time,
  period: 2,
  heartPeriod: 0.5,
  pressures: { calf: wave((p) => 60 * Math.sin(p / 2) ** 2) },
  flows: { legs: wave((p) => 0.6 - 0.5 * Math.cos(p)), legBed: wave((p) => 0.6 + 0.2 * Math.sin(p)) },
  volumes: {},
};

test("blood lies as dense in every stretch of the vein, squeezed or not, through many squeezes", () => {
  const column = bloodColumn(traces, 0.72);
  for (let t = 0; t < 20; t += 0.13) {
    const squeeze = squeezeAt(traces, t);
    const found = new Array<number>(8).fill(0);
    column.each(t, squeeze, (_, y) => {
      expect(y).toBeGreaterThanOrEqual(0);
      expect(y).toBeLessThanOrEqual(PLANE.height);
      found[Math.min(7, Math.floor((8 * y) / PLANE.height))]!++;
    });
    expect(found.reduce((a, b) => a + b)).toBeLessThanOrEqual(column.count);
    const dense = found.map((count, i) => {
      const heights = Array.from({ length: 20 }, (_, k) => ((i + (k + 0.5) / 20) * PLANE.height) / 8);
      return count / heights.reduce((sum, y) => sum + halfWidth(y, squeeze), 0);
    });
    expect(Math.max(...dense) / Math.min(...dense), `at ${t}`).toBeLessThan(1.35);
  }
});

test("a dot moves up by the blood that has come in below it and left above it", () => {
  const column = bloodColumn(traces, 0.72);
  const at = (time: number) => {
    const heights = new Map<number, number>();
    column.each(time, 0, (dot, y) => heights.set(dot, y));
    return heights;
  };
  const [before, after] = [at(0), at(traces.period)];
  const moved = [...after].flatMap(([dot, y]) => (before.has(dot) ? [before.get(dot)! - y] : []));
  expect(moved.length).toBeGreaterThan(40);
  // 0.6 L/min over one repeat are 20 mL of the column's 65.5; the pockets of the valves are wider.
  const mean = moved.reduce((a, b) => a + b) / moved.length;
  expect(mean / ((20 / (91 * 0.72)) * PLANE.height)).toBeCloseTo(1, 1);
});

test("a leaflet keeps its length from closed to open, and the two meet when closed", () => {
  const length = (open: number) => {
    const [left] = leaflets(VALVES[0].y, open);
    return Math.hypot(left.tip[0] - left.hinge[0], left.tip[1] - left.hinge[1]);
  };
  for (const open of [0, 0.3, 0.7, 1]) expect(length(open)).toBeCloseTo(length(0), 9);
  const [left, right] = leaflets(VALVES[0].y, 0);
  expect(left.tip).toEqual(right.tip);
});

test("a leaflet grows out of the wall on both sides of its hinge", () => {
  for (const side of [-1, 1] as const)
    for (const [x, y] of leafletBase(VALVES[1].y, side))
      expect(side * (x - PLANE.middle)).toBeCloseTo(halfWidth(y, 0), 9);
  const [low, high] = leafletBase(VALVES[0].y, 1);
  expect(low[1]).toBeGreaterThan(VALVES[0].y);
  expect(high[1]).toBeLessThan(VALVES[0].y);
});

test("the calf's muscles lie behind the tibia, and their tendon reaches from them to the calcaneus", () => {
  const near = (part: typeof SKIN, y: number) =>
    outlineOf(part)
      .filter(([, at]) => Math.abs(at - y) < 20)
      .map(([x]) => x);
  for (let y = 270; y <= 680; y += 20) {
    const bone = Math.min(...near(TIBIA, y));
    for (const muscle of [GASTROCNEMIUS, SOLEUS])
      for (const x of near(muscle, y)) expect(x, `at ${y}`).toBeLessThan(bone);
    // Vein and muscle have room within the skin.
    expect(PLANE.middle + halfWidth(y, 0)).toBeLessThan(bone);
    expect(Math.min(...near(GASTROCNEMIUS, y), bone)).toBeGreaterThan(Math.min(...near(SKIN, y)));
  }
  const top = Math.min(...outlineOf(ACHILLES_TENDON).map(([, y]) => y));
  const foot = outlineOf(ACHILLES_TENDON).reduce((a, b) => (b[1] > a[1] ? b : a));
  expect(top).toBeLessThan(Math.max(...outlineOf(GASTROCNEMIUS).map(([, y]) => y)));
  const heel = outlineOf(CALCANEUS);
  expect(Math.min(...heel.map(([x, y]) => Math.hypot(x - foot[0], y - foot[1])))).toBeLessThan(12);
});

test("squeezing narrows the vein within the muscle only, and never shuts it", () => {
  const middle = (CALF.top + CALF.bottom) / 2;
  expect(halfWidth(middle, 1)).toBeLessThan(0.5 * halfWidth(middle, 0));
  expect(halfWidth(middle, 1)).toBeGreaterThan(5);
  expect(halfWidth(40, 1)).toBe(halfWidth(40, 0));
});

test("blood stays between the leaflets and the walls", () => {
  for (const open of [0, 0.5, 1])
    for (let y = 0; y < PLANE.height; y += 5)
      expect(freeHalfWidth(y, 0.6, [open, open])).toBeLessThanOrEqual(halfWidth(y, 0.6));
});

test("each contraction is found once, and a calf at rest squeezes never", () => {
  expect(squeezes(traces)).toHaveLength(2);
  expect(calfDoing(traces, 0.25)).toBe("squeeze");
  expect(calfDoing(traces, 0.75)).toBe("release");
  // Between two contractions it rests, though its pressure is about to rise.
  expect(calfDoing(traces, 0.02)).toBe("rest");
  const rest = { ...traces, pressures: { calf: new Float64Array(401) } };
  expect(squeezes(rest)).toEqual([]);
  expect(calfDoing(rest, 0.25)).toBe("rest");
  expect(squeezeAt(rest, 0.5)).toBe(0);
});

test("the foot ends in a round toe", () => {
  const end = outlineOf(SKIN)
    .filter(([x, y]) => x > 645 && y > 800)
    .map(([, y]) => y);
  expect(Math.max(...end) - Math.min(...end)).toBeGreaterThan(45);
});
