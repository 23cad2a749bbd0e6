import { expect, test } from "vitest";
import { type FoundStop, stopAsked } from "../../../../src/modes/lecture/talk/stops.ts";

const stops = ["job", "chamber", "race"].map((step) => ({
  kind: "step",
  step,
})) as unknown as readonly FoundStop[];

test.each([
  ["", 0],
  ["2", 1],
  ["race", 2],
  ["gone", 0],
  ["99", 2],
  ["-4", 0],
  ["1.5", 0],
])("a talk asked to open at %j begins at stop %i", (asked, index) => {
  expect(stopAsked(stops, asked)).toBe(index);
});
