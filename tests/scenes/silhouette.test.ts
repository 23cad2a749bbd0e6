import type { Graphics } from "pixi.js";
import { describe, expect, test } from "vitest";
import { vesselsOf } from "../../src/scenes/circuit/anatomy.ts";
import { layVessels } from "../../src/scenes/circuit/dots.ts";
import { FILLED, PAINTED } from "../../src/scenes/circuit/outlines.ts";
import { drawThroughLiver } from "../../src/scenes/circuit/silhouette.ts";
import type { Spot } from "../../src/scenes/drawing/curve-drawing.ts";
import { darkTheme } from "../../src/scenes/theme/theme.ts";
import type { Circulation } from "../../src/sim/circulation/answer/answer.ts";
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

  test("is seen faintly through the liver where it passes behind it, and nowhere else", () => {
    expect(vein).toMatchObject({ under: true, behind: true });
    const strokes: { readonly spots: readonly Spot[]; readonly alpha: number }[] = [];
    let line: readonly number[] = [];
    const ink = {
      poly: (points: readonly number[]) => {
        line = points;
        return ink;
      },
      stroke: ({ alpha }: { alpha: number }) => {
        const spots = line.flatMap((x, i) => (i % 2 === 0 ? [[x, line[i + 1]!] as const] : []));
        strokes.push({ spots, alpha });
      },
    };
    const circulation = {
      saturations: { ivc: 70 },
      extras: {},
      traces: { flows: {} },
    } as unknown as Circulation;
    drawThroughLiver(ink as unknown as Graphics, layVessels([vein]), circulation, darkTheme(String));
    expect(strokes).toHaveLength(3);
    for (const { spots, alpha } of strokes) {
      expect(alpha).toBeLessThan(0.5);
      // As low as the liver goes in a breath.
      for (const spot of spots)
        expect(
          within(spot, liver) || within([spot[0], spot[1] - 15], liver),
          `through the liver at ${spot}`,
        ).toBe(true);
      const down = spots.map(([, y]) => y);
      const [top, bottom] = [Math.min(...down), Math.max(...down)];
      expect(bottom - top).toBeGreaterThan(60);
      const x = spots[0]![0];
      expect(within([x, bottom + 12], liver)).toBe(false);
      // Above it goes on as what runs to the heart, before the liver's bare area.
      expect(top).toBeLessThan(Math.min(...vein.points.map(([, y]) => y)) + 12);
    }
  });
});
