import { afterEach, beforeEach, expect, test, vi } from "vitest";
import { screenFrames } from "../../../../src/modes/shared/stage/frame-wishes.ts";

/** ms from one screen frame to the next */
const FRAME = 16;

beforeEach(() => {
  vi.useFakeTimers();
  vi.stubGlobal("requestAnimationFrame", (call: () => void) => setTimeout(call, FRAME));
});
afterEach(() => {
  vi.useRealTimers();
  vi.unstubAllGlobals();
});

function started() {
  const state = { wanted: true, rest: 0, turns: 0 };
  const frames = screenFrames(
    () => state.wanted,
    () => state.turns++,
    () => state.rest,
  );
  frames.begin();
  const turnsIn = (ms: number): number => {
    const before = state.turns;
    vi.advanceTimersByTime(ms);
    return state.turns - before;
  };
  return { state, frames, turnsIn };
}

test("each screen frame gets a turn while it is wanted, and none after", () => {
  const { state, turnsIn } = started();
  expect(turnsIn(160)).toBe(10);
  state.wanted = false;
  expect(turnsIn(1000)).toBe(0);
});

test("at rest the frames are asked for less often, and begin again where they were wanted no more", () => {
  const { state, frames, turnsIn } = started();
  state.rest = 100;
  turnsIn(FRAME);
  expect(turnsIn(1160)).toBe(10);
  state.wanted = false;
  turnsIn(1000);
  Object.assign(state, { wanted: true, rest: 0 });
  frames.begin();
  expect(turnsIn(160)).toBe(10);
});

test("whatever hurries ends a rest at the next screen frame, and doubles nothing", () => {
  const { state, frames, turnsIn } = started();
  state.rest = 100;
  turnsIn(200);
  state.rest = 0;
  for (let time = 0; time < 3; time++) frames.hurry();
  frames.begin();
  expect(turnsIn(FRAME)).toBe(1);
  expect(turnsIn(160)).toBe(10);
});
