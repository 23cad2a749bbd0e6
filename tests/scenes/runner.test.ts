import { describe, expect, test } from "vitest";
import { buildOf } from "../../src/scenes/circuit/proportions.ts";
import { armAt, flightAt, legAt } from "../../src/scenes/drawing/gait.ts";
import { gaitOf, runner } from "../../src/scenes/drawing/runner.ts";

const ROUNDS = Array.from({ length: 40 }, (_, i) => i / 40);
const spots = (effort: number, round: number) =>
  runner(gaitOf(effort), round).flatMap(({ outline }) => outline);
const lowest = (effort: number, round: number) => Math.min(...spots(effort, round).map(([, y]) => y));
const width = (effort: number) =>
  Math.max(
    ...ROUNDS.map((round) => {
      const xs = spots(effort, round).map(([x]) => x);
      return Math.max(...xs) - Math.min(...xs);
    }),
  );

describe("a person from the side", () => {
  test("stands at rest, walks from two times rest, and runs at six", () => {
    expect(gaitOf(1)).toEqual({ stride: 0, running: 0 });
    expect(gaitOf(3).running).toBe(0);
    expect(gaitOf(3).stride).toBeGreaterThan(gaitOf(2).stride);
    expect(gaitOf(6).running).toBe(1);
    expect(gaitOf(8).stride).toBeGreaterThan(gaitOf(6).stride);
    expect(width(8)).toBeGreaterThan(width(3));
    expect(width(3)).toBeGreaterThan(1.7 * width(1));
  });

  test("swings each arm against the leg of its side", () => {
    for (const effort of [3, 8]) {
      const gait = gaitOf(effort);
      const [forward, back] = [0, 0.5].map((round) => ({ leg: legAt(gait, round), arm: armAt(gait, round) }));
      expect(forward!.leg.hip).toBeGreaterThan(back!.leg.hip);
      expect(forward!.arm.shoulder).toBeLessThan(back!.arm.shoulder);
    }
  });

  test("always has a foot down when walking; flies between two steps when running", () => {
    for (const round of ROUNDS) expect(lowest(3, round)).toBeCloseTo(0, 9);
    const heights = ROUNDS.map((round) => lowest(8, round));
    expect(Math.max(...heights)).toBeGreaterThan(0.02);
    expect(heights.filter((each) => each < 1e-9).length).toBeGreaterThan(ROUNDS.length / 2);
    expect(flightAt(gaitOf(8), 0.2)).toBe(0);
    expect(flightAt(gaitOf(8), 0.44)).toBeGreaterThan(0.9);
  });

  test("moves without a jump from round to round", () => {
    for (const effort of [3, 8])
      for (const from of [...ROUNDS, 0.9999]) {
        const [a, b] = [legAt(gaitOf(effort), from), legAt(gaitOf(effort), from + 0.002)];
        for (const joint of ["hip", "knee", "ankle"] as const)
          expect(Math.abs(a[joint] - b[joint])).toBeLessThan(0.03);
      }
  });

  test("has at five years a belly that stands out before the chest, as a grown one's chest does before the belly", () => {
    const furthest = (years: number) => {
      const shirt = runner(gaitOf(1), 0, buildOf(years)).findLast(
        ({ tone, crest }) => tone === "shirt" && crest,
      )!;
      const level = Math.max(...shirt.outline.map(([, y]) => y));
      const foot = Math.min(...shirt.outline.map(([, y]) => y));
      const [, at] = shirt.outline.reduce((best, spot) => (spot[0] > best[0] ? spot : best));
      return (at - foot) / (level - foot);
    };
    expect(furthest(5)).toBeLessThan(0.5);
    expect(furthest(19)).toBeGreaterThan(0.6);
  });

  test("is as tall at each effort", () => {
    for (const effort of [1, 3, 5, 8]) {
      const tops = ROUNDS.map((round) => Math.max(...spots(effort, round).map(([, y]) => y)));
      expect(Math.max(...tops)).toBeLessThan(1.06);
      expect(Math.min(...tops)).toBeGreaterThan(0.9);
    }
  });
});
