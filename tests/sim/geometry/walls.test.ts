import { expect, test } from "vitest";
import type { FlowGeometry } from "../../../src/sim/geometry/geometry.ts";
import { wallOutlines } from "../../../src/sim/geometry/walls.ts";

const disc: FlowGeometry = { open: [{ disc: { centre: [3, -2], radius: 10 } }], solid: [], openings: [] };

function area(points: readonly (readonly [number, number])[]): number {
  return points.reduce((sum, [x, y], i) => {
    const [nextX, nextY] = points[(i + 1) % points.length]!;
    return sum + (x * nextY - nextX * y) / 2;
  }, 0);
}

test("a disc's outline is its circle, to second order in the mesh", () => {
  const miss = (dx: number) => Math.abs(area(wallOutlines(disc, dx)[0]!.points) / (Math.PI * 100) - 1);
  for (const [x, y] of wallOutlines(disc, 0.5)[0]!.points)
    expect(Math.hypot(x - 3, y + 2)).toBeCloseTo(10, 1);
  expect(miss(1) / miss(0.5)).toBeGreaterThan(3);
});

test("blood is on the left: outer outlines turn anticlockwise, holes clockwise", () => {
  const ring: FlowGeometry = { ...disc, solid: [{ disc: { centre: [3, -2], radius: 4 } }] };
  const [outer, inner] = wallOutlines(ring, 0.5);
  // Signed areas of the two circles, to a part in a hundred.
  expect(area(outer!.points) / (Math.PI * 10 ** 2)).toBeCloseTo(1, 2);
  expect(area(inner!.points) / (Math.PI * 4 ** 2)).toBeCloseTo(-1, 2);
});

test("only the straight cut across a tube counts as its opening", () => {
  const tube: FlowGeometry = {
    open: [
      {
        tube: {
          points: [
            [0, 0],
            [40, 0],
          ],
          width: 10,
        },
      },
    ],
    solid: [],
    openings: [{ name: "far", centre: [40, 0], normal: [1, 0], width: 10, pressure: 0 }],
  };
  const [outline] = wallOutlines(tube, 0.5);
  const marked = outline!.points.filter((_, i) => outline!.openings[i] === "far");
  expect(marked.length).toBeGreaterThan(10);
  for (const [x] of marked) expect(x).toBeCloseTo(40, 1);
  expect(Math.max(...outline!.points.map(([x]) => x))).toBeLessThan(40.2);
});
