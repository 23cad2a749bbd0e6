import { describe, expect, test } from "vitest";
import { buildMesh, type CutCellMesh } from "../../../src/sim/flow-solver/cut-cell-mesh.ts";
import type { FlowGeometry, Point } from "../../../src/sim/geometry/geometry.ts";

const turned = (points: readonly Point[], degrees: number): Point[] => {
  const [c, s] = [Math.cos((degrees * Math.PI) / 180), Math.sin((degrees * Math.PI) / 180)];
  return points.map(([x, y]) => [c * x - s * y, s * x + c * y]);
};
const polygon = (points: readonly Point[]): FlowGeometry => ({
  open: [{ polygon: { points } }],
  solid: [],
  openings: [],
});
/** mm: the round lumen's diameter that stands for a cell. */
const diameterAt = (mesh: CutCellMesh, [x, y]: Point): number => {
  const i = Math.round((x - mesh.originX) / mesh.dx);
  const j = Math.round((y - mesh.originY) / mesh.dx);
  return (4 / Math.PI) * mesh.depth[j * mesh.nx + i]!;
};

const channel: Point[] = [
  [-20, -4],
  [20, -4],
  [20, 4],
  [-20, 4],
];
const step: Point[] = [
  [-20, 0],
  [0, 0],
  [0, -8],
  [40, -8],
  [40, 8],
  [-20, 8],
];

describe("Depth of a polygon", () => {
  test.each([
    [0, 10],
    [0, 11],
    [17, 7],
    [30, 10],
    [45, 13],
  ])(
    "a straight channel of 8 mm turned by %i degrees is 8 mm wide and accordingly deep on %i cells, at any position of the grid",
    (degrees, cells) => {
      const mesh = buildMesh(polygon(turned(channel, degrees)), { dx: 8 / cells, depth: "round" });
      for (const at of turned(
        [
          [0, 0],
          [6, 2.5],
          [-9, -3],
        ],
        degrees,
      ))
        expect(Math.abs(diameterAt(mesh, at) / 8 - 1)).toBeLessThan(0.005);
    },
  );

  test.each([10, 20])(
    "a step of %i cells: the narrow side keeps its width up to the step, the wide side has its own",
    (cells) => {
      const mesh = buildMesh(polygon(step), { dx: 8 / cells, depth: "round" });
      for (const x of [-12, -3, -1]) expect(diameterAt(mesh, [x, 4]), `${x}`).toBeCloseTo(8, 1);
      for (const x of [5, 12, 30]) expect(diameterAt(mesh, [x, 2]), `${x}`).toBeCloseTo(16, 1);
      expect(diameterAt(mesh, [12, -7.5])).toBeCloseTo(16, 1);
    },
  );
});
