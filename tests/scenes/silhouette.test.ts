import type { Graphics } from "pixi.js";
import { describe, expect, test } from "vitest";
import { vesselsOf } from "../../src/scenes/circuit/anatomy.ts";
import { FILLED, PAINTED } from "../../src/scenes/circuit/outlines.ts";
import { drawLiverBefore } from "../../src/scenes/circuit/silhouette.ts";
import type { Spot } from "../../src/scenes/drawing/curve-drawing.ts";
import { darkTheme } from "../../src/scenes/theme/theme.ts";
import { shapeDistance } from "../../src/sim/geometry/distance.ts";
import { STAGES } from "../../src/sim/parameters/request.ts";

const within = ([x, y]: Spot, outline: readonly Spot[]): boolean =>
  shapeDistance({ polygon: { points: outline } })(x, y) < 0;

test.each(STAGES)("all vessels run within the body: %s", (stage) => {
  const outside = vesselsOf(stage, true).flatMap(({ name, points }) =>
    points.filter((spot) => !FILLED.some((shape) => within(spot, shape))).map((spot) => [name, ...spot]),
  );
  expect(outside).toEqual([]);
});

describe("the inferior vena cava", () => {
  const vein = vesselsOf("extracardiac", false).find(({ name }) => name === "lowerIvc")!;
  const liver = PAINTED.find(({ name }) => name === "liver")!.points;

  test("passes behind the liver, which covers it there and nowhere else", () => {
    expect(vein.under).toBe(true);
    let covered: readonly number[] = [];
    const ink = {
      poly: (points: readonly number[]) => {
        covered = points;
        return ink;
      },
      fill: ({ alpha }: { alpha: number }) => expect(alpha).toBeLessThan(0.8),
    };
    drawLiverBefore(ink as unknown as Graphics, vein.points, vein.width, darkTheme(String));
    const spots = covered.flatMap((x, i) => (i % 2 === 0 ? [[x, covered[i + 1]!] as const] : []));
    const reach = (k: 0 | 1) => {
      const all = spots.map((spot) => spot[k]);
      return [Math.min(...all), Math.max(...all)] as const;
    };
    const [left, right] = reach(0);
    expect(right - left).toBeGreaterThan(vein.width);
    expect(right - left).toBeLessThan(vein.width + 20);
    const [top, bottom] = reach(1);
    expect(bottom - top).toBeGreaterThan(60);
    for (const y of [top + 12, bottom - 12])
      expect(within([468, y], liver), `liver before the vein at ${y}`).toBe(true);
    for (const y of [top - 12, bottom + 12]) expect(within([468, y], liver)).toBe(false);
  });
});
