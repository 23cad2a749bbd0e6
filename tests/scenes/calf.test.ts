import type { Graphics } from "pixi.js";
import { expect, test } from "vitest";
import { legValves } from "../../src/chain/leg-valves.ts";
import { bloodColumn } from "../../src/scenes/calf/blood-column.ts";
import {
  ACHILLES_TENDON,
  CALCANEUS,
  DEEP_FLEXORS,
  FASCIA,
  FEMUR,
  GASTROCNEMIUS,
  SKIN,
  SOLEUS,
  TIBIA,
} from "../../src/scenes/calf/leg-parts.ts";
import { drawPushes } from "../../src/scenes/calf/pushes.ts";
import { outlineOf } from "../../src/scenes/calf/rounded.ts";
import { calfDoing, squeezes, stillAt } from "../../src/scenes/calf/squeezes.ts";
import { beforeVein, behindVein, bulge } from "../../src/scenes/calf/strip-ends.ts";
import {
  CALF,
  type Cusp,
  cuspOf,
  freeHalf,
  freeHalfWidth,
  HALF,
  halfWidth,
  LENGTH,
  onCusp,
  placeInLeg,
  pressedAt,
  squeezeAt,
  VALVES,
} from "../../src/scenes/calf/vein.ts";
import { darkTheme } from "../../src/scenes/theme/theme.ts";
import type { Circulation, Traces } from "../../src/sim/circulation/answer/answer.ts";
import { lowerValveFlow } from "../../src/sim/circulation/experiments/foot-veins.ts";

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

const fromBelow = lowerValveFlow(traces, traces.flows.legBed!, 0.72);

/** Plane units squared of half the vein between two places along it. */
const roomBetween = (from: number, to: number, pressed: number) =>
  Array.from({ length: 40 }, (_, k) => halfWidth(from + ((k + 0.5) * (to - from)) / 40, pressed)).reduce(
    (a, b) => a + b,
  ) *
  ((to - from) / 40);

test("above the lower valve blood lies as dense everywhere, squeezed or not, through many squeezes", () => {
  const column = bloodColumn(traces, 0.72, fromBelow);
  const lower = VALVES[1].at;
  for (let t = 0; t < 20; t += 0.13) {
    const pressed = pressedAt(traces, t);
    const found = new Array<number>(5).fill(0);
    let all = 0;
    column.each(t, pressed, (_, y) => {
      expect(y).toBeGreaterThanOrEqual(0);
      expect(y).toBeLessThanOrEqual(LENGTH);
      all++;
      if (y < lower) found[Math.floor((5 * y) / lower)]!++;
    });
    expect(all).toBeLessThanOrEqual(column.count);
    const room = found.map((_, i) => roomBetween((i * lower) / 5, ((i + 1) * lower) / 5, pressed));
    const [dots, whole] = [found, room].map((each) => each.reduce((x, y) => x + y)) as [number, number];
    found.forEach((count, i) => {
      const even = (dots * room[i]!) / whole;
      expect(Math.abs(count - even), `stretch ${i} at ${t}`).toBeLessThan(2 + 0.1 * even);
    });
  }
});

test("while the calf squeezes, its lower valve lets nothing pass and the blood below it stands still", () => {
  const passed = fromBelow;
  const mean = (flow: Float64Array) => flow.slice(1).reduce((a, b) => a + b) / (flow.length - 1);
  expect(mean(passed)).toBeCloseTo(mean(traces.flows.legBed!), 3);
  // The muscle's pressure rises from 0.1 s to 0.5 s.
  for (let i = 20; i <= 100; i++) expect(passed[i]).toBe(0);
  expect(Math.max(...passed)).toBeGreaterThan(1);
  const column = bloodColumn(traces, 0.72, fromBelow);
  const below = (time: number) => {
    const found: number[] = [];
    column.each(time, pressedAt(traces, time), (_, y) => {
      if (y > VALVES[1].at) found.push(y);
    });
    return found;
  };
  expect(below(0.15).length).toBeGreaterThan(8);
  expect(below(0.45)).toEqual(below(0.15));
  expect(below(0.95)).not.toEqual(below(0.15));
});

test("the computed valves: the upper one opens and the lower one shuts with the squeeze, and the other way round after it", () => {
  const circulation = {
    traces,
    request: { body: { bsa: 0.72, haemoglobin: 150 } },
  } as unknown as Circulation;
  const valves = legValves();
  const at = (time: number) => valves.follow(circulation, time)!;
  const squeezed = at(4.4);
  expect(squeezed.out).toBeGreaterThan(0.5);
  expect(squeezed.in).toBeLessThan(0.05);
  expect(at(4.9).in).toBeGreaterThan(0.3);
});

test("a dot moves up by the blood that has come in below it and left above it", () => {
  const column = bloodColumn(traces, 0.72, fromBelow);
  const at = (time: number) => {
    const heights = new Map<number, number>();
    column.each(time, 0, (dot, y) => heights.set(dot, y));
    return heights;
  };
  const [before, after] = [at(0), at(traces.period)];
  const moved = [...after].flatMap(([dot, y]) =>
    before.has(dot) ? [roomBetween(y, before.get(dot)!, 0)] : [],
  );
  expect(moved.length).toBeGreaterThan(40);
  // 0.6 L/min over one cycle are 20 mL of the column's 65.5.
  const mean = moved.reduce((a, b) => a + b) / moved.length;
  expect(mean / ((20 / (91 * 0.72)) * roomBetween(0, LENGTH, 0))).toBeCloseTo(1, 1);
});

const spans = (cusp: Cusp) => Math.hypot(cusp[3][0] - cusp[0][0], cusp[3][1] - cusp[0][1]);

test("a cusp keeps its length from closed to open, and two lean on each other when closed", () => {
  const { at } = VALVES[0];
  for (const open of [0.3, 0.7, 1]) expect(spans(cuspOf(at, open)) / spans(cuspOf(at, 0))).toBeCloseTo(1, 1);
  expect(onCusp(cuspOf(at, 0), 1)[0]).toBe(0);
  const [edge, along] = onCusp(cuspOf(at, 1), 1);
  expect(edge).toBeGreaterThan(0.55 * HALF);
  // Open, it floats in the stream: a sinus stays behind it.
  expect(edge).toBeLessThan(0.6 * halfWidth(along, 0));
});

test("a cusp is hinged at the wall, its free edge towards the heart; shut it sags into a pocket below the chord", () => {
  for (const { at } of VALVES) {
    const [wall, , , edge] = cuspOf(at, 0);
    expect(wall[0]).toBeCloseTo(halfWidth(at, 0), -1);
    expect(edge[1]).toBeLessThan(at);
    const [across, along] = onCusp(cuspOf(at, 0), 0.5);
    expect(across).toBeLessThan((wall[0] + edge[0]) / 2);
    expect(along).toBeGreaterThan((wall[1] + edge[1]) / 2);
    // Behind it the wall bulges.
    const [size, free] = [freeHalf(at) / HALF, freeHalf(at)];
    expect(halfWidth(at - 24 * size, 0)).toBeGreaterThan(free + 6);
    expect(halfWidth(at + 10 * size, 0)).toBeLessThan(free + 2);
  }
});

test("the calf's muscles lie behind the vein and the tibia, and one tendon reaches from them to the calcaneus", () => {
  const near = (part: typeof SKIN, y: number) =>
    outlineOf(part)
      .filter(([, at]) => Math.abs(at - y) < 20)
      .map(([x]) => x);
  const vein = (y: number) => placeInLeg(y, 0).spot[0];
  for (let y = 300; y <= 680; y += 20) {
    const bone = Math.min(...near(TIBIA, y));
    for (const muscle of [GASTROCNEMIUS, SOLEUS])
      for (const x of near(muscle, y)) expect(x, `at ${y}`).toBeLessThan(vein(y));
    // Vein and deep muscle, into which the bulges behind valves press, have room before the bone, and all of them within fascia and skin.
    expect(vein(y) + halfWidth(y, 0)).toBeLessThan(Math.min(bone, ...near(DEEP_FLEXORS, y)) + 15);
    expect(Math.min(...near(GASTROCNEMIUS, y), bone)).toBeGreaterThan(Math.min(...near(FASCIA, y)));
    expect(Math.min(...near(FASCIA, y))).toBeGreaterThan(Math.min(...near(SKIN, y)));
  }
  const foot = outlineOf(ACHILLES_TENDON).reduce((a, b) => (b[1] > a[1] ? b : a));
  const top = Math.min(...outlineOf(ACHILLES_TENDON).map(([, y]) => y));
  for (const muscle of [GASTROCNEMIUS, SOLEUS])
    expect(top).toBeLessThan(Math.max(...outlineOf(muscle).map(([, y]) => y)));
  const heel = outlineOf(CALCANEUS);
  expect(Math.min(...heel.map(([x, y]) => Math.hypot(x - foot[0], y - foot[1])))).toBeLessThan(20);
});

test("the vein runs from behind the knee to the sole of the foot, within the skin", () => {
  const sole = Math.max(...outlineOf(SKIN).map(([, y]) => y));
  for (let at = 0; at <= LENGTH; at += 20) {
    const { spot, up } = placeInLeg(at, 0);
    expect(spot[1]).toBeLessThan(sole - 8);
    expect(Math.hypot(...up)).toBeCloseTo(1, 6);
  }
  expect(placeInLeg(0, 0).spot[0]).toBeLessThan(Math.min(...outlineOf(FEMUR).map(([x]) => x)));
  expect(placeInLeg(LENGTH, 0).spot[0]).toBeGreaterThan(Math.max(...outlineOf(TIBIA).map(([x]) => x)) + 150);
});

test("squeezing narrows the vein within the muscle only, and never shuts it", () => {
  const middle = (CALF.top + CALF.bottom) / 2;
  expect(halfWidth(middle, 1)).toBeLessThan(0.5 * halfWidth(middle, 0));
  expect(halfWidth(middle, 1)).toBeGreaterThan(5);
  expect(halfWidth(40, 1)).toBe(halfWidth(40, 0));
});

test("the muscle's pressure itself flattens the vein, more when it is higher", () => {
  const withPeak = (peak: number): Traces => ({
    ...traces,
    pressures: { calf: wave((p) => peak * Math.sin(p / 2) ** 2) },
  });
  const [weak, strong] = [10, 60].map((peak) => pressedAt(withPeak(peak), 0.5)) as [number, number];
  expect(weak).toBeLessThan(0.5 * strong);
  expect(strong).toBeGreaterThan(0.85);
  expect(pressedAt(withPeak(60), 0)).toBeCloseTo(0, 6);
});

test("muscles follow the vein's walls on both sides, and the belly bulges back as it presses", () => {
  const y = (CALF.top + CALF.bottom) / 2;
  for (const pressed of [0, 0.5, 1]) {
    const wall = halfWidth(y, pressed);
    expect(behindVein(FASCIA)(y, pressed)[1]).toBeCloseTo(placeInLeg(y, -wall).spot[0], 6);
    expect(beforeVein(TIBIA)(y, pressed)[1]).toBeCloseTo(placeInLeg(y, wall).spot[0], 6);
    expect(beforeVein(TIBIA)(y, pressed)[0]).toBe(beforeVein(TIBIA)(y, 0)[0]);
    expect(behindVein(SKIN, 250)(y, 0)[0] - behindVein(SKIN, 250)(y, pressed)[0]).toBeCloseTo(
      bulge(y, pressed),
      6,
    );
  }
  expect(bulge(y, 1)).toBeGreaterThan(12);
  expect(bulge(CALF.bottom + 20, 1)).toBe(0);
});

test("arrows onto the vein grow with the pressure, and there are none at rest", () => {
  const lengths = (pressed: number) => {
    const found: number[] = [];
    const ink: Graphics = {
      poly: (points: number[]) => {
        const xs = points.filter((_, i) => i % 2 === 0);
        found.push(Math.max(...xs) - Math.min(...xs));
        return ink;
      },
      fill: () => ink,
      stroke: () => ink,
    } as unknown as Graphics;
    drawPushes(
      ink,
      pressed,
      darkTheme((key) => key),
    );
    return found;
  };
  expect(lengths(0)).toEqual([]);
  expect(lengths(0.5)).toHaveLength(6);
  const half = lengths(0.5);
  for (const [i, long] of lengths(1).entries()) expect(long).toBeGreaterThan((half[i] ?? 0) + 10);
});

test("blood stays between the leaflets and the walls", () => {
  for (const open of [0, 0.5, 1])
    for (let y = 0; y < LENGTH; y += 5)
      expect(
        freeHalfWidth(
          y,
          0.6,
          VALVES.map(() => open),
        ),
      ).toBeLessThanOrEqual(halfWidth(y, 0.6));
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

test("a picture that never moved shows the squeeze at the moment at which most blood leaves, and a calf at rest its beginning", () => {
  const still = stillAt(traces);
  expect(calfDoing(traces, still)).toBe("squeeze");
  const leaving = (at: number) => traces.flows.legs![Math.round(200 * at)]!;
  for (let at = 0; at < 2; at += 0.01)
    if (calfDoing(traces, at) === "squeeze") expect(leaving(at)).toBeLessThanOrEqual(leaving(still) + 1e-9);
  expect(stillAt({ ...traces, pressures: { calf: new Float64Array(401) } })).toBe(0);
});

test("a squeeze begins where the muscle's pressure begins to rise and ends where it is greatest", () => {
  const [first] = squeezes(traces);
  expect(first!.from).toBeLessThan(0.1);
  expect(first!.to).toBeCloseTo(0.5, 1);
});

test("the foot ends in a round toe", () => {
  const end = outlineOf(SKIN)
    .filter(([x, y]) => x > 680 && y > 800)
    .map(([, y]) => y);
  expect(Math.max(...end) - Math.min(...end)).toBeGreaterThan(45);
});
