import { describe, expect, it } from "vitest";
import { contour, turning } from "../../src/scenes/layers/contour.ts";

const grid = { nx: 81, ny: 61, dx: 0.5, originX: -20, originY: -15 };
const field = (distance: (x: number, y: number) => number) =>
  Float32Array.from({ length: grid.nx * grid.ny }, (_, k) =>
    distance(grid.originX + (k % grid.nx) * grid.dx, grid.originY + Math.floor(k / grid.nx) * grid.dx),
  );

describe("an outline traced from a distance field", () => {
  it("of a disc is on its rim within a hundredth of a cell and turns around the inside", () => {
    const [loop, ...rest] = contour(
      grid,
      field((x, y) => Math.hypot(x, y) - 10),
      0,
    );
    expect(rest).toEqual([]);
    for (let i = 0; i < loop!.length; i += 2) {
      expect(Math.abs(Math.hypot(loop![i]!, loop![i + 1]!) - 10)).toBeLessThan(0.01);
    }
    expect(turning(loop!) / 2 / (Math.PI * 100)).toBeCloseTo(1, 2);
  });

  it("of a ring is a rim and a hole of opposite turning", () => {
    const loops = contour(
      grid,
      field((x, y) => Math.abs(Math.hypot(x, y) - 8) - 3),
      0,
    );
    expect(loops.map((loop) => Math.sign(turning(loop))).sort()).toEqual([-1, 1]);
  });

  it("closes along the grid's edge where the inside runs beyond it", () => {
    const [loop] = contour(
      grid,
      field((_, y) => Math.abs(y) - 4),
      0,
    );
    expect(turning(loop!) / 2).toBeGreaterThan(40 * 8);
    expect(turning(loop!) / 2).toBeLessThan(41.2 * 8.2);
  });
});
