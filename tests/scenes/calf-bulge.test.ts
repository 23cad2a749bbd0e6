import { expect, test } from "vitest";
import { bulge } from "../../src/scenes/calf/strip-ends.ts";
import { narrowing } from "../../src/scenes/calf/vein.ts";

test("the belly thickens by no more than lateral head and soleus together at their greatest effort, 11 to 14 mm (Maganaris 1998)", () => {
  const heights = Array.from({ length: 60 }, (_, i) => 200 + 5 * i);
  const thickens = (pressed: number) =>
    Math.max(...heights.map((y) => bulge(y, pressed) - narrowing(y, pressed))) / 2;
  expect(thickens(0)).toBe(0);
  expect(thickens(1)).toBeGreaterThan(5);
  expect(thickens(1)).toBeLessThan(11);
});
