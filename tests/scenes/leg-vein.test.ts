import { expect, test } from "vitest";
import { legValves } from "../../src/chain/leg-valves.ts";
import { bloodColumn } from "../../src/scenes/calf/blood-column.ts";
import { WALL } from "../../src/scenes/calf/paint-vein.ts";
import {
  type Cusp,
  cuspOf,
  freeHalf,
  HALF,
  halfWidth,
  LENGTH,
  onCusp,
  pressedAt,
  VALVES,
} from "../../src/scenes/calf/vein.ts";
import type { Circulation } from "../../src/sim/circulation/answer/answer.ts";
import { lowerValveFlow } from "../../src/sim/circulation/experiments/foot-veins.ts";
import { traces, wave } from "./leg-traces.ts";

const fromBelow = lowerValveFlow(traces, traces.flows.legBed!, 0.72);

/** Plane units squared of half the vein between two places along it. */
const roomBetween = (from: number, to: number, pressed: number) =>
  Array.from({ length: 40 }, (_, k) => halfWidth(from + ((k + 0.5) * (to - from)) / 40, pressed)).reduce(
    (a, b) => a + b,
  ) *
  ((to - from) / 40);

test("between its valves, and above them, blood lies as dense everywhere, squeezed or not, through many squeezes", () => {
  const column = bloodColumn(traces, 0.72, fromBelow);
  const [upper, lower] = [VALVES[0].at, VALVES[1].at];
  for (let t = 0; t < 20; t += 0.13) {
    const pressed = pressedAt(traces, t);
    const all: number[] = [];
    column.each(t, (_, y) => all.push(y));
    expect(all.length).toBeLessThanOrEqual(column.count);
    for (const y of all) {
      expect(y).toBeGreaterThanOrEqual(0);
      expect(y).toBeLessThanOrEqual(LENGTH);
    }
    for (const [from, to] of [
      [0, upper],
      [upper, lower],
    ] as const) {
      const middle = (from + to) / 2;
      const [found, room] = [
        [from, middle],
        [middle, to],
      ].reduce<[number[], number[]]>(
        ([counts, rooms], [a, b]) => [
          [...counts, all.filter((y) => y >= a! && y < b!).length],
          [...rooms, roomBetween(a!, b!, pressed)],
        ],
        [[], []],
      );
      const even = ((found[0]! + found[1]!) * room[0]!) / (room[0]! + room[1]!);
      expect(Math.abs(found[0]! - even), `from ${from} at ${t}`).toBeLessThan(2 + 0.1 * even);
    }
  }
});

test("blood above a shut upper valve stands still, however the calf widens below it", () => {
  const out = wave((p) => Math.max(0, 1.2 * Math.sin(p)));
  const squeezed = { ...traces, flows: { ...traces.flows, legs: out } };
  const column = bloodColumn(squeezed, 0.72, fromBelow);
  let [resting, moving] = [0, 0];
  column.each(0.8, (_, y, __, speed) => {
    if (y > VALVES[0].at) return;
    resting++;
    expect(speed).toBeCloseTo(0, 6);
  });
  column.each(0.25, (_, y, __, speed) => {
    if (y > VALVES[0].at) return;
    moving++;
    expect(speed).toBeGreaterThan(50);
  });
  expect(Math.min(resting, moving)).toBeGreaterThan(10);
});

test("a dot's speed is how far it goes", () => {
  const column = bloodColumn(traces, 0.72, fromBelow);
  const places = (time: number) => {
    const found = new Map<number, { readonly at: number; readonly speed: number }>();
    column.each(time, (dot, at, _, speed) => found.set(dot, { at, speed }));
    return found;
  };
  const [before, after] = [places(0.29), places(0.3)];
  for (const [dot, { at, speed }] of after)
    if (before.has(dot)) expect((before.get(dot)!.at - at) / 0.01).toBeCloseTo(speed, 6);
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
    column.each(time, (_, y) => {
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
    column.each(time, (dot, y) => heights.set(dot, y));
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

const longOf = (cusp: Cusp) => {
  const spots = Array.from({ length: 41 }, (_, i) => onCusp(cusp, i / 40));
  return spots.slice(1).reduce((sum, [x, y], i) => sum + Math.hypot(x - spots[i]![0], y - spots[i]![1]), 0);
};

test("a cusp keeps its length from closed to open, and two lean on each other when closed", () => {
  const { at } = VALVES[0];
  for (const open of [0.2, 0.5, 0.8, 1])
    expect(Math.abs(longOf(cuspOf(at, open)) / longOf(cuspOf(at, 0)) - 1)).toBeLessThan(0.04);
  expect(onCusp(cuspOf(at, 0), 1)[0]).toBe(0);
  const [edge, along] = onCusp(cuspOf(at, 1), 1);
  expect(edge).toBeGreaterThan(0.55 * HALF);
  // Open, it floats in the stream: a sinus stays behind it.
  expect(edge).toBeLessThan(0.6 * halfWidth(along, 0));
});

test("a cusp is hinged at the wall, its free edge towards the heart; shut it sags into a pocket below the chord", () => {
  for (const { at } of VALVES) {
    const [wall, , , edge] = cuspOf(at, 0);
    for (const open of [0, 0.5, 1]) {
      const [[across, along]] = cuspOf(at, open);
      expect(halfWidth(along, 0) - across).toBeLessThan(WALL / 2);
      expect(halfWidth(along, 0) - across).toBeGreaterThan(-WALL / 2);
    }
    expect(edge[1]).toBeLessThan(at);
    // It hangs lower than its hinge, as a cup open towards the heart.
    expect(onCusp(cuspOf(at, 0), 0.35)[1]).toBeGreaterThan(at);
    const [across, along] = onCusp(cuspOf(at, 0), 0.5);
    expect(across).toBeLessThan((wall[0] + edge[0]) / 2);
    expect(along).toBeGreaterThan((wall[1] + edge[1]) / 2);
    // Behind it the wall bulges.
    const [size, free] = [freeHalf(at) / HALF, freeHalf(at)];
    expect(halfWidth(at - 24 * size, 0)).toBeGreaterThan(free + 6);
    expect(halfWidth(at + 10 * size, 0)).toBeLessThan(free + 2);
  }
});
