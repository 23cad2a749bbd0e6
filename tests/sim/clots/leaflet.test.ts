import { expect, test } from "vitest";
import { closedAngle, type LeafletState, openness, swing } from "../../../src/sim/clots/leaflet.ts";

const blood = { density: 1060, viscosity: 3.3e-3 };
/** A deep calf vein of 7 mm. */
const valve = { halfWidth: 3.5e-3, length: 4.7e-3 };
const shut: LeafletState = { angle: closedAngle(valve), turning: 0 };

const after = (from: LeafletState, velocity: number, seconds: number) =>
  swing(valve, from, velocity, seconds, blood);

test("a squeeze opens the leaflet: wide within a third of a second at 0.2 m/s", () => {
  expect(openness(valve, shut)).toBeCloseTo(0, 9);
  expect(openness(valve, after(shut, 0.2, 0.33))).toBeGreaterThan(0.9);
});

test("blood that runs back closes it, and faster than recoil alone", () => {
  const open = after(shut, 0.2, 1);
  const timeToClose = (velocity: number) => {
    let state = open;
    let t = 0;
    for (; openness(valve, state) > 0.05 && t < 3; t += 0.01) state = after(state, velocity, 0.01);
    return t;
  };
  const back = timeToClose(-0.1);
  const still = timeToClose(0);
  expect(back).toBeLessThan(0.2);
  expect(still).toBeGreaterThan(back);
  // about 0.4 s at rest (Lurie 2003: 0.41 s)
  expect(still).toBeLessThan(0.8);
});

test("slow flow holds it part way: the stream that keeps it open is balanced by its recoil", () => {
  const slow = openness(valve, after(shut, 0.03, 5));
  const slower = openness(valve, after(shut, 0.015, 5));
  expect(slow).toBeGreaterThan(slower);
  expect(slower).toBeGreaterThan(0);
  expect(slow).toBeLessThanOrEqual(1);
});

test("it stays between its stops and finite, however wild the flow", () => {
  let state = shut;
  for (let n = 0; n < 2000; n++) {
    state = after(state, 3 * Math.sin(n * n), 1 / 60);
    expect(openness(valve, state)).toBeGreaterThanOrEqual(-1e-9);
    expect(openness(valve, state)).toBeLessThanOrEqual(1 + 1e-9);
  }
});

test("two half steps equal one whole step", () => {
  const whole = after(shut, 0.1, 0.1);
  const halves = after(after(shut, 0.1, 0.05), 0.1, 0.05);
  expect(halves.angle).toBeCloseTo(whole.angle, 6);
});
