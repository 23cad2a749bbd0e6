/** What the stage's link hands to the lecture, whatever wrote the link in capitals or small. */
import { runInNewContext } from "node:vm";
import { afterEach, beforeEach, expect, test, vi } from "vitest";
import { newCode, newKey } from "../../src/audience/room-keys.ts";
import { STAGE_DOOR } from "../../src/audience/stage-door.ts";
import { keptStageKey } from "../../src/modes/lecture/audience/stage-key.ts";

const kept = new Map<string, string>();
const sessionStorage = {
  getItem: (name: string) => kept.get(name) ?? null,
  setItem: (name: string, text: string) => void kept.set(name, text),
};
beforeEach(() => {
  kept.clear();
  vi.stubGlobal("sessionStorage", sessionStorage);
  vi.stubGlobal("location", { protocol: "http:" });
});
afterEach(() => {
  vi.unstubAllGlobals();
});

function enterBy(link: string) {
  const script = /<script>([\s\S]*)<\/script>/.exec(STAGE_DOOR.page)?.[1] ?? "";
  runInNewContext(script, { location: { hash: `#${link}`, replace: () => {} }, sessionStorage });
  return keptStageKey();
}

test("a link all small or all in capitals leads to the same room", () => {
  const [code, key] = [newCode(), newKey()];
  for (const link of [`${code}.${key}`, `${code}.${key}`.toLowerCase(), `${code}.${key}`.toUpperCase()])
    expect(enterBy(link)).toEqual({ code, key });
});

test("what cannot be a room's code or key is not called for", () => {
  for (const link of ["", newCode(), `0000000.${newKey()}`, `${newCode()}.short`]) {
    kept.clear();
    expect(enterBy(link)).toBeNull();
  }
});
