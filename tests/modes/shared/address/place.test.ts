import { describe, expect, test } from "vitest";
import { hasMessage, LANGUAGES, languageFor, nearestLanguage, t } from "../../../../src/i18n/index.ts";
import type { Library } from "../../../../src/lesson/library/library.ts";
import { placeFaults } from "../../../../src/modes/place-faults.ts";
import { readPlace, writePlace } from "../../../../src/modes/shared/address/place.ts";

test("an unknown way to draw is reported with what is allowed, and the place still opens", () => {
  const { place, dropped } = readPlace("?mode=bench&draw=paint");
  expect(place.mode).toBe("bench");
  expect(dropped).toEqual([{ path: "draw", found: "paint", allowed: "webgl, canvas" }]);
});

test("a way to draw stays in the address", () => {
  const { place, dropped } = readPlace("?mode=bench&draw=canvas&state=1");
  expect(dropped).toEqual([]);
  expect(writePlace(place)).toBe("?mode=bench&draw=canvas&state=1");
});

const EXIST = new RegExp(`^${LANGUAGES.join(", ")}$`);

test.each([
  ["mode", "?mode=theatre", "theatre", /home, bench, study/],
  ["language", "?language=constructor", "constructor", EXIST],
  ["language", "?language=__proto__", "__proto__", EXIST],
  ["view", "?mode=study&lesson=x&view=constructor", "constructor", /^text, picture, handout$/],
  ["window", "?mode=lecture&window=toString", "toString", /^speaker$/],
])("%s that does not exist is reported with what exists", (path, query, found, allowed) => {
  const { place, dropped } = readPlace(query);
  expect(dropped).toEqual([{ path, found, allowed: expect.stringMatching(allowed) }]);
  expect(languageFor(place.language || "en")).toBe("en");
});

test("names that every object has are no language, no message and no parameter", () => {
  for (const name of ["constructor", "__proto__", "toString", "valueOf", "hasOwnProperty"]) {
    expect(nearestLanguage(name)).toBe("en");
    expect(hasMessage(name)).toBe(false);
    expect(t(name)).toBe(`[${name}]`);
  }
});

describe("what an address asks of the library", () => {
  const step = (id: string) => ({ id });
  const library = {
    lessons: [{ id: "01-one", steps: [step("first"), step("second")] }],
    pages: Object.assign(Object.create(null), { "not-known": {} }),
  } as unknown as Library;
  const faults = (query: string) => placeFaults(readPlace(query).place, library);

  test.each([
    ["?lesson=01-two", "lesson", "01-two", "01-one"],
    ["?mode=lecture&lesson=constructor", "lesson", "constructor", "01-one"],
    ["?mode=author&lesson=__proto__", "lesson", "__proto__", "01-one"],
    ["?lesson=01-one&step=third", "step", "third", "first, second"],
    ["?lesson=01-one&step=3", "step", "3", "first, second"],
    ["?mode=study&page=__proto__", "page", "__proto__", "glossary, sources, quiz, package, not-known"],
    ["?mode=lecture&list=01-two*first&step=1", "list", "01-two", "01-one"],
    ["?mode=lecture&list=01-one*second&step=first", "step", "first", "second"],
  ])("%s is reported", (query, path, found, allowed) => {
    expect(faults(query)).toEqual([{ path, found, allowed }]);
  });

  test.each([
    "?lesson=01-one&step=second",
    "?lesson=01-one&step=2",
    "?mode=study&page=glossary",
    "?mode=bench",
  ])("%s is whole", (query) => {
    expect(faults(query)).toEqual([]);
  });
});
