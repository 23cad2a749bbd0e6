import { expect, test } from "vitest";
import { anatomyOf } from "../../src/scenes/anatomy/chest-anatomy.ts";
import { vesselsOf } from "../../src/scenes/circuit/anatomy.ts";
import { chestFrame, onPlane } from "../../src/scenes/circuit/chest-plan.ts";
import { type Laid, layDots, layVessels, placeDot } from "../../src/scenes/circuit/dots.ts";
import type { Spot } from "../../src/scenes/drawing/curve-drawing.ts";
import { outlineDistance } from "../../src/sim/geometry/distance.ts";
import type { Point } from "../../src/sim/geometry/geometry.ts";
import { STAGES } from "../../src/sim/parameters/request.ts";

/** Where the marks of these ways are when each has been passed by this part of itself. */
function marks(laid: readonly Laid[], passed: Readonly<Record<string, number>>): readonly Spot[] {
  const dots = layDots(laid);
  const out = new Float64Array(6);
  return Array.from(dots.vessel).flatMap((index, i): Spot[] => {
    const each = laid[index]!;
    const part = passed[each.vessel.name];
    if (part === undefined) return [];
    placeDot(each, dots.start[i]!, dots.across[i]!, part * each.line.length, out);
    return [[out[0]!, out[1]!]];
  });
}

const apart = ([ax, ay]: Spot, [bx, by]: Spot): number => Math.hypot(ax - bx, ay - by);
const CAVITIES: Readonly<Record<string, readonly (readonly [string, string, readonly Point[]])[]>> = {
  single: [
    [
      "throughAtrium",
      "throughVentricle",
      [
        [1, -13],
        [8, -15],
        [16, -15.4],
        [25, -12],
        [33, -8],
        [36.6, 1],
        [31, 9],
        [23, 13],
        [14, 15],
        [7, 14.6],
        [1, 13],
      ],
    ],
  ],
  pair: [
    [
      "throughAtrium",
      "throughVentricle",
      [
        [41, -30],
        [55, -30],
        [60, -42],
        [61.4, -51],
        [59, -62],
        [53, -69],
        [46, -64],
        [40, -56],
        [36, -47],
        [40, -42],
      ],
    ],
    [
      "throughRightVentricle",
      "throughOutflow",
      [
        [11, -40],
        [11, -54],
        [14, -60.4],
        [20, -66.6],
        [29, -72],
        [37, -74],
        [31, -64],
        [26, -55],
        [23.6, -46],
        [25, -36],
        [18, -38],
      ],
    ],
  ],
};

test.each(STAGES)("%s: at every moment blood fills a ventricle's whole width evenly", (stage) => {
  const { at } = anatomyOf(chestFrame(stage)).heart;
  const single = stage !== "two-ventricle";
  for (const [filling, ejecting, inside] of CAVITIES[single ? "single" : "pair"]!) {
    const outline = inside.map(([x, y]) => onPlane(single ? at(x, y) : [x, y]));
    const distance = outlineDistance(outline);
    const [xs, ys] = [outline.map(([x]) => x), outline.map(([, y]) => y)];
    const laid = layVessels(vesselsOf(stage, false)).filter(({ vessel }) =>
      [filling, ejecting].includes(vessel.name),
    );
    let [empty, worst, crowd] = [0, "", 1e9];
    for (let k = 0; k < 20; k++) {
      const all = marks(laid, { [filling]: (k * 7) / 20, [ejecting]: (k * 11) / 20 });
      for (let x = Math.min(...xs); x < Math.max(...xs); x += 6)
        for (let y = Math.min(...ys); y < Math.max(...ys); y += 6) {
          if (distance(x, y) > 0) continue;
          const away = Math.min(...all.map((mark) => apart(mark, [x, y])));
          if (away > empty) [empty, worst] = [away, `${x} ${y}`];
        }
      all.forEach((mark, i) => {
        for (const other of all.slice(i + 1)) crowd = Math.min(crowd, apart(mark, other));
      });
    }
    // No hole wider than two marks' own room, and no two on one another.
    expect(empty, `${filling} ${worst}`).toBeLessThan(33);
    expect(crowd, filling).toBeGreaterThan(5);
  }
});
