import * as v from "valibot";
import { afterEach, expect, it, vi } from "vitest";
import { windowKept } from "../../../../src/modes/lecture/windows/window-kept.ts";

const kept = windowKept("lungward.test", v.object({ at: v.number() }));

const storage = (text: string | null) => {
  const held = new Map(text === null ? [] : [["lungward.test", text]]);
  vi.stubGlobal("sessionStorage", {
    getItem: (key: string) => held.get(key) ?? null,
    setItem: (key: string, value: string) => held.set(key, value),
    removeItem: (key: string) => held.delete(key),
  });
  return held;
};

afterEach(() => vi.unstubAllGlobals());

it("gives back what was written, and nothing once it is taken away", () => {
  const held = storage(null);
  expect(kept.read()).toBeNull();
  kept.write({ at: 3 });
  expect(kept.read()).toEqual({ at: 3 });
  kept.write(null);
  expect(held.size).toBe(0);
});

it.each(["{", '{"at":"3"}', "[]", "null"])("takes %s for nothing", (text) => {
  storage(text);
  expect(kept.read()).toBeNull();
});

it("does without a storage that is denied", () => {
  vi.stubGlobal("sessionStorage", undefined);
  expect(kept.read()).toBeNull();
  expect(() => kept.write({ at: 1 })).not.toThrow();
});
