import { signal } from "@preact/signals";
import { afterEach, expect, test, vi } from "vitest";
import { scenePictures } from "../../src/modes/bench/scene-pictures.ts";
import { SCENES, START } from "../../src/state/scene-state.ts";

afterEach(() => {
  vi.useRealTimers();
  vi.unstubAllGlobals();
});

/** ms from the answer at which each scene's picture is drawn, with a key pressed at `keys`; `name` keeps the pictures of two cases apart. */
async function drawnAt(
  name: string,
  still: boolean,
  keys: readonly number[] = [],
): Promise<readonly number[]> {
  vi.useFakeTimers();
  const page = new EventTarget();
  vi.stubGlobal("addEventListener", page.addEventListener.bind(page));
  vi.stubGlobal("removeEventListener", page.removeEventListener.bind(page));
  for (const at of keys) setTimeout(() => page.dispatchEvent(new Event("keydown")), at);
  vi.stubGlobal("document", {
    createElement: () => ({ getContext: () => ({ drawImage() {} }), toDataURL: () => "data:," }),
  });
  const began = Date.now();
  const drawn: number[] = [];
  const { pictures, release } = scenePictures({
    session: { chain: { circulations: signal([{ request: START.request }]) }, scene: signal(START) },
    stage: {
      way: signal("canvas"),
      frame: () => ({ still }),
      async preview() {
        drawn.push(Date.now() - began);
        return { width: 8, height: 4 };
      },
    },
    theme: signal(name),
  } as unknown as Parameters<typeof scenePictures>[0]);
  await vi.advanceTimersByTimeAsync(10_000);
  expect(Object.keys(pictures.value).sort()).toEqual([...SCENES].sort());
  release();
  return drawn;
}

test("beside a picture that stands still the scenes' pictures come within a second, one by one", async () => {
  const drawn = await drawnAt("still", true);
  expect(drawn[0]).toBeLessThan(1000);
  expect(drawn.at(-1)).toBeLessThan(1500);
  expect(new Set(drawn).size).toBe(SCENES.length);
});

test("beside one that moves they wait for the first view, and leave it time between two", async () => {
  const drawn = await drawnAt("moving", false);
  expect(drawn[0]).toBeGreaterThanOrEqual(1000);
  expect(drawn.at(-1)).toBeLessThan(2000);
  for (const [i, at] of drawn.slice(1).entries()) expect(at - drawn[i]!).toBeGreaterThanOrEqual(100);
});

test("while a person works they wait until nothing has been pressed for a while", async () => {
  const keys = [200, 700, 1200, 1700];
  const drawn = await drawnAt("working", true, keys);
  expect(drawn[0]).toBeGreaterThanOrEqual(1700 + 500);
  expect(drawn[0]).toBeLessThan(1700 + 1000);
  expect(drawn.at(-1)! - drawn[0]!).toBeLessThan(1000);
});
