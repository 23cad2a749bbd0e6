import { expect, test } from "vitest";
import { WALL } from "../../src/scenes/calf/paint-vein.ts";
import { cuspOf, freeHalf, halfWidth, MEET, onCusp, VALVES } from "../../src/scenes/calf/vein.ts";
import { slicesOf } from "../../src/scenes/drawing/cusp-sheet.ts";

test.each([0, 0.5, 1])(
  "what of a cusp that stands %f open lies behind its cut is one sheet on the wall",
  (open) => {
    for (const { at } of VALVES) {
      const cusp = cuspOf(at, open);
      const wall = (along: number) => halfWidth(at - along, 0);
      const meets = MEET * freeHalf(at);
      const cut = (t: number) => {
        const [across, along] = onCusp(cusp, t);
        return [across, at - along] as const;
      };
      const slices = slicesOf({ cut, wall, meets }, 6, 10);
      // It begins as the cut itself and ends where both cusps meet on the back wall.
      slices[0]!.forEach((spot, i) => {
        expect(spot[0]).toBeCloseTo(cut(i / 10)[0], 6);
        expect(spot[1]).toBeCloseTo(cut(i / 10)[1], 6);
      });
      for (const [across, along] of slices.at(-1)!) {
        expect(across).toBeCloseTo(0, 6);
        expect(along).toBeCloseTo(meets, 6);
      }
      // Between, it springs from the wall higher the farther back, and stays within the vessel.
      const roots = slices.map((slice) => slice[0]!);
      for (let k = 2; k < roots.length; k++) expect(roots[k]![1]).toBeGreaterThan(roots[k - 1]![1]);
      for (const [across, along] of slices.flat()) {
        expect(across).toBeGreaterThanOrEqual(-1e-9);
        expect(across).toBeLessThan(wall(along) + WALL / 2);
      }
    }
  },
);
