import { expect, test } from "vitest";
import { readPlace, writePlace } from "../../src/settings/where.ts";

test("a way to draw that there is not is told with what is allowed, and the place opens all the same", () => {
  const { place, dropped } = readPlace("?setting=bench&draw=paint");
  expect(place.setting).toBe("bench");
  expect(dropped).toEqual([{ path: "draw", found: "paint", allowed: "webgl, canvas" }]);
});

test("a way to draw stays in the address", () => {
  const { place, dropped } = readPlace("?setting=bench&draw=canvas&state=1");
  expect(dropped).toEqual([]);
  expect(writePlace(place)).toBe("?setting=bench&draw=canvas&state=1");
});
