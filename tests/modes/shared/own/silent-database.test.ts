/** A browser whose database never answers: lessons and talks open without what is in it. */
import { afterEach, beforeEach, expect, test, vi } from "vitest";
import { openOwnTexts } from "../../../../src/modes/shared/own/own-texts.ts";
import { browserTextStore } from "../../../../src/modes/shared/own/text-store.ts";

beforeEach(() => {
  vi.useFakeTimers();
  const databases = async () => [{ name: "lungward-own" }, { name: "lungward-talk" }];
  vi.stubGlobal("indexedDB", { databases, open: () => ({}) });
  vi.stubGlobal("localStorage", { getItem: () => null, setItem: () => {}, removeItem: () => {} });
});
afterEach(() => {
  vi.unstubAllGlobals();
  vi.useRealTimers();
});

test("own lessons are none, and the page knows that it keeps nothing", async () => {
  const opening = openOwnTexts({ store: browserTextStore() });
  await vi.advanceTimersByTimeAsync(10_000);
  const texts = await opening;
  expect([texts.list.value, texts.keeps.value]).toEqual([[], false]);
});

test("a text that is not taken in time is told", async () => {
  const store = { ...browserTextStore(), all: async () => [] };
  const texts = await openOwnTexts({ store });
  texts.add("A", "text");
  expect(texts.keeps.value).toBe(true);
  await vi.advanceTimersByTimeAsync(10_000);
  expect(texts.keeps.value).toBe(false);
});

test("no talk is kept", async () => {
  // A window of its own: others' tests have kept a talk in theirs.
  vi.resetModules();
  const { readKeptTalk } = await import("../../../../src/modes/lecture/files/talk-store.ts");
  const reading = readKeptTalk();
  await vi.advanceTimersByTimeAsync(10_000);
  expect(await reading).toBeNull();
  // Nor may the next file's tests wait for a database that this one has asked.
  vi.resetModules();
});
