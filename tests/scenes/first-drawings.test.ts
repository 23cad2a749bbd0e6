// @vitest-environment happy-dom
/** What a scene's first drawings leave for later, and for how long. */
import { expect, test } from "vitest";
import type { Frame, Pane } from "../../src/chain/frame.ts";
import { openingForeseen } from "../../src/chain/opening-start.ts";
import { firstDrawings } from "../../src/scenes/pathway/first-drawings.ts";
import { solve } from "../../src/sim/circulation/solve.ts";
import { START } from "../../src/state/scene-state.ts";

const frame = (flows: boolean, still = false): Frame => {
  const tracers = flows ? ({ count: 1 } as Pane["tracers"]) : null;
  const pane = { circulation: null, geometry: null, shape: null, field: null, clots: [], washOut: null };
  return { state: START, panes: [{ ...pane, tracers }], time: 0, pace: 1, degraded: [], still };
};

const SOON = { elapsed: 0.1 };

test("blood is seen in two drawings before all else is drawn, and never leaves it out again", () => {
  const { next } = firstDrawings();
  expect(next(frame(false), SOON)).toBe(true);
  expect([1, 2, 3, 4].map(() => next(frame(true), SOON))).toEqual([true, true, false, false]);
  expect(next(frame(false), SOON)).toBe(false);
});

test("a picture without blood does not wait for it long", () => {
  const { next } = firstDrawings();
  const drawn = Array.from({ length: 20 }, () => next(frame(false), SOON));
  expect(drawn.indexOf(false)).toBeGreaterThan(10);
  expect(drawn.slice(drawn.indexOf(false))).not.toContain(true);
});

test("until words can be written blood is drawn without them", () => {
  const { next } = firstDrawings();
  const first = (mute: boolean) => next(frame(true), { ...SOON, mute });
  expect([true, true, true, true, false].map(first)).toEqual([true, true, true, true, false]);
});

test("until blood that is foreseen is solved nothing else is drawn, within what is waited for", () => {
  const foreseen = { ...frame(true) };
  const panes = foreseen.panes.map((pane) => ({ ...pane, foreseen: openingForeseen(START.request)! }));
  const { next } = firstDrawings();
  expect([1, 2, 3, 4, 5].map(() => next({ ...foreseen, panes }, SOON))).not.toContain(false);
  expect(next(frame(true), SOON)).toBe(false);
  const { next: late } = firstDrawings();
  const drawn = Array.from({ length: 50 }, () => late({ ...foreseen, panes }, SOON));
  expect(drawn.indexOf(false)).toBeGreaterThan(20);
});

test("what has been drawn without blood does not go again when blood comes", () => {
  const { next } = firstDrawings();
  expect(next(frame(false), { elapsed: 2 })).toBe(false);
  expect([1, 2, 3].map(() => next(frame(true), SOON))).toEqual([false, false, false]);
});

test("what stands still, or is taken along, is whole from the first", () => {
  expect(firstDrawings().next(frame(true, true), { elapsed: 0 })).toBe(false);
  expect(firstDrawings().next(frame(false), { elapsed: Number.POSITIVE_INFINITY })).toBe(false);
});

test("a heart that pumps into the lungs brings its grounds and words with it", () => {
  const circulation = solve({ ...START.request, stage: "two-ventricle" });
  const pumped = { ...frame(false), panes: frame(false).panes.map((pane) => ({ ...pane, circulation })) };
  const { next } = firstDrawings();
  expect(next(frame(false), SOON)).toBe(true);
  expect(next(pumped, SOON)).toBe(false);
});
