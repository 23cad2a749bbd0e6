/** One file owns where the page is: it alone writes the place, the location and the browser's history. */
import { expect, test } from "vitest";
import { readSources, sourceOf } from "./sources.ts";

const OWNER = "src/modes/shared/address/address-sync.ts";
/** A page of the audience's server, which leads to the kit before the kit is there. */
const DOOR = "src/audience/stage-door.ts";
const WRITES: readonly RegExp[] = [
  /\bhistory\.(push|replace)State\b|\bhistory\.(back|forward|go)\(/,
  /\blocation\.(assign|replace)\(|\blocation(\.(href|search|hash|pathname))?\s*=(?!=)/,
  /["'](popstate|hashchange)["']/,
  /\bplace\.value\s*=(?!=)|\bplace\s*[:=]\s*signal\(/,
];
const writes = (text: string): boolean => WRITES.some((pattern) => pattern.test(text));

test("only the owner writes them", () => {
  const writers = readSources("src").filter(({ text }) => writes(text));
  expect(writers.map(({ path }) => path)).toEqual([DOOR, OWNER]);
});

test.each([
  "context.place.value = { ...context.place.peek(), step };",
  'history.pushState(null, "", query);',
  "location.href = there;",
  'window.location = "?mode=home";',
  'addEventListener("popstate", back);',
  "const place = signal(first);",
])("a writer that is planted is found: %s", (line) => {
  expect(writes(sourceOf("src/modes/home/planted.tsx", `${line}\n`).text)).toBe(true);
});

test.each(["if (place.value === there) return;", "const launch = readLaunch(location.search);"])(
  "reading is free: %s",
  (line) => {
    expect(writes(line)).toBe(false);
  },
);
