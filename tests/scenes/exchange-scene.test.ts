// @vitest-environment happy-dom
import { expect, test } from "vitest";
import type { Frame } from "../../src/chain/frame.ts";
import { t } from "../../src/i18n/index.ts";
import { dayAt, dropsFor, figuresAt, swelling } from "../../src/scenes/exchange/day.ts";
import { drainedOf, readExchange } from "../../src/scenes/exchange/exchange-reading.ts";
import { stateOf } from "../../src/scenes/exchange/notes.ts";
import { solve } from "../../src/sim/circulation/solve.ts";
import { firstDaysRequest, solveExchange } from "../../src/sim/exchange/index.ts";
import { START } from "../../src/state/scene-state.ts";

const circulation = solve(START.request);
const course = solveExchange(circulation, { firstDays: solve(firstDaysRequest(circulation.request)!) });

test("the days run from the operation to the end of the course, wait there and start again", () => {
  expect(dayAt(course, 0, false)).toBe(0);
  expect(dayAt(course, 3, false)).toBeCloseTo(2, 9);
  expect(dayAt(course, 33, false)).toBe(21);
  expect(dayAt(course, 21 * 1.5 + 6 + 1.5, false)).toBeCloseTo(1, 9);
});

test("U3 a still shows one day on which fluid leaves, is carried back and runs over", () => {
  const day = dayAt(course, 17, true);
  expect(day).toBe(dayAt(course, 900, true));
  const { filtration, lymph, overflow } = figuresAt(course, day);
  // mL/h: what leaves is carried back or runs over, but for what tissue and liver still take up on such a day.
  expect(overflow).toBeGreaterThan(1);
  expect((lymph + overflow) / filtration).toBeGreaterThan(0.9);
  expect(lymph + overflow).toBeLessThan(filtration);
});

test("the words over the tissue say where what lymph does not carry goes, and when it comes back", () => {
  const states = course.days.map((day) => stateOf(figuresAt(course, day)));
  course.days.forEach((day, i) => {
    const { filtration, lymph, overflow } = figuresAt(course, day);
    const state = states[i]!;
    if (state === "floods" || state === "swells")
      expect(filtration, `day ${day}`).toBeGreaterThan(lymph + overflow);
    if (state === "over") expect(filtration, `day ${day}`).toBeGreaterThanOrEqual(lymph);
    if (state === "eases" || state === "shrinks") expect(lymph, `day ${day}`).toBeGreaterThan(filtration);
    if (state === "keeps") expect(Math.abs(filtration / lymph - 1), `day ${day}`).toBeLessThan(0.07);
  });
  expect(states[8]).toBe("floods");
  expect(states).toContain("eases");
  expect(states.at(-1)).toBe("keeps");
});

test("values between the course's points are interpolated, and at the points are exact", () => {
  expect(figuresAt(course, course.days[9]!).lymph).toBeCloseTo(course.lymph[9]!, 9);
  const between = figuresAt(course, (course.days[9]! + course.days[10]!) / 2).lymph;
  expect(between).toBeCloseTo((course.lymph[9]! + course.lymph[10]!) / 2, 9);
  expect(figuresAt(course, 999).lymph).toBeCloseTo(course.lymph.at(-1)!, 9);
});

test("twice the flow is twice the drops, up to what the picture holds", () => {
  expect(dropsFor(200, 10, 90)).toBe(2 * dropsFor(100, 10, 90));
  expect(dropsFor(5000, 10, 90)).toBe(90);
  expect(dropsFor(-3, 10, 90)).toBe(0);
});

test("tissue swells little while its pressure is below zero and much above (Guyton 1965, shape)", () => {
  expect(swelling(-3)).toBe(1);
  expect(swelling(2) - swelling(1)).toBeGreaterThan(2 * (swelling(-1) - swelling(-2)));
});

test("the course is described in words with its own figures", () => {
  const frame = { panes: [{ circulation, exchange: course }] } as unknown as Frame;
  const reading = readExchange(frame)!;
  expect(reading.args.drained).toBe(course.drainedTotal);
  expect(t(reading.key, reading.args)).toMatch(/^After 21 days/);
  expect(readExchange({ panes: [] } as unknown as Frame)).toBeNull();
});

test("no lever makes the words say that something is not a number", () => {
  for (const set of [
    { heldAtrialPressure: 20, pulmonaryResistanceIndex: 3 },
    { heldAtrialPressure: 14, pulmonaryResistanceIndex: 6 },
    { heldAtrialPressure: 18, pulmonaryResistanceIndex: 4 },
  ]) {
    const full = solve({ ...START.request, set });
    expect(full.pressures.svc).toBeGreaterThan(27.3);
    const frame = { panes: [{ circulation: full, exchange: solveExchange(full) }] } as unknown as Frame;
    const { key, args } = readExchange(frame)!;
    expect(t(key, args)).not.toContain("NaN");
  }
});

test("what was drained is told once in each of its units", () => {
  const title = t("further.exchange.collectedTitle", drainedOf(course)).replaceAll(/\s/gu, " ");
  expect(title).toMatch(/drained in all: [\d,]+ mL, \d+ mL\/kg\)$/);
});
