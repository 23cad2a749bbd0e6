import { afterEach, beforeEach, expect, it, vi } from "vitest";
import { hearHall, startHall } from "../../../../src/modes/lecture/hall/hall.ts";
import { handsOf, keepHands } from "../../../../src/modes/lecture/hall/kept-hands.ts";
import { beginAnew, talkClock } from "../../../../src/modes/lecture/talk/talk-clock.ts";

beforeEach(() => {
  const held = new Map<string, string>();
  vi.stubGlobal("sessionStorage", {
    getItem: (key: string) => held.get(key) ?? null,
    setItem: (key: string, value: string) => held.set(key, value),
    removeItem: (key: string) => held.delete(key),
  });
  vi.useFakeTimers({ now: 1000 });
});
afterEach(() => {
  vi.useRealTimers();
  vi.unstubAllGlobals();
});

const began = (list: string) => talkClock(list).began.value;

it("begins once, and goes on after a reload for the talk that it was begun with alone", () => {
  const clock = talkClock("kept");
  expect(clock.began.value).toBeNull();
  clock.begin();
  vi.setSystemTime(5000);
  clock.begin();
  expect(clock.began.value).toBe(1000);
  expect(began("kept")).toBe(1000);
  expect(began("lesson#step")).toBeNull();
});

it("gives a talk that is begun anew, as after a rehearsal, all its time", () => {
  talkClock("kept").begin();
  beginAnew();
  expect(began("kept")).toBeNull();
});

it("counts the hands of its own talk alone, and none of a rehearsal", () => {
  const raised = hearHall(startHall("lesson#step"), { kind: "hand", choice: "more" });
  keepHands("kept", [raised]);
  expect(handsOf("kept")).toEqual([raised]);
  expect(handsOf("lesson#step")).toEqual([]);
  beginAnew();
  expect(handsOf("kept")).toEqual([]);
});

it("runs without a storage", () => {
  vi.stubGlobal("sessionStorage", undefined);
  const clock = talkClock("kept");
  clock.begin();
  expect(clock.began.value).toBe(1000);
});
