// @vitest-environment happy-dom
import { expect, test } from "vitest";
import { takePictures } from "../../../../src/modes/lecture/files/take-pictures.ts";

test("an SVG that would take seconds to clean is refused before it is read, and says how large one may be", async () => {
  const file = new File([`<svg>${"<g/>".repeat(1_100_000)}</svg>`], "bomb.svg");
  const { pictures, faults } = await takePictures(file, 10, () => {});
  expect(pictures).toEqual([]);
  expect(faults).toEqual([{ path: "bomb.svg", found: "4.4 MB", allowed: "at most 4.0 MB" }]);
});
