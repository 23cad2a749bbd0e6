/** Reasons why a plane cannot be solved, found before anything is solved. */
import type { Fault } from "../faults.ts";
import { buildMesh, type CutCellMesh, type GridChoice } from "../flow-solver/cut-cell-mesh.ts";
import { shapeBounds } from "../geometry/distance.ts";
import type { FlowGeometry } from "../geometry/geometry.ts";
import { openingRule } from "./boundary-conditions.ts";

/** Cells across the widest side of the grid on which openings and connections are checked. */
const FEW = 600;

/**
 * All faults of the plane (mm): too many cells, openings without blood behind them, given flows that do not cancel.
 * @param tooMany gives the fault when a grid of so many cells is refused
 */
export function planeFaults(
  geometry: FlowGeometry,
  choice: GridChoice,
  tooMany: (count: number) => Fault | undefined,
): readonly Fault[] {
  const boxes = geometry.open.map(shapeBounds);
  const wide = Math.max(...boxes.map((box) => box[2])) - Math.min(...boxes.map((box) => box[0]));
  const high = Math.max(...boxes.map((box) => box[3])) - Math.min(...boxes.map((box) => box[1]));
  const excess = tooMany((wide * high) / choice.dx ** 2);
  if (excess) return [excess];
  const dx = Math.max(choice.dx, Math.max(wide, high) / FEW);
  const mesh = buildMesh(geometry, { dx, depth: "uniform" });
  const part = connectedParts(mesh);
  const faults: Fault[] = [];
  const reached = geometry.openings.map((_, n) => partBehind(mesh, part, n));
  geometry.openings.forEach(({ centre }, n) => {
    if (reached[n] === 0)
      faults.push({
        path: `openings[${n}].centre`,
        found: `[${centre.join(", ")}] mm, where no blood ends`,
        allowed: "a point on the edge of the blood, with normal pointing out of it",
      });
  });
  if (faults.length > 0) return faults;
  return unbalanced(geometry, choice, reached);
}

function unbalanced(geometry: FlowGeometry, { depth }: GridChoice, reached: readonly number[]): Fault[] {
  for (const each of new Set(reached)) {
    const openings = geometry.openings.filter((_, n) => reached[n] === each);
    if (openings.some((opening) => openingRule(opening, undefined) === "pressure")) continue;
    const flows = openings.map(
      ({ velocity, width }) => (velocity ?? 0) * (depth === "round" ? width * width : width),
    );
    const net = flows.reduce((sum, flow) => sum + flow, 0);
    const most = Math.max(...flows.map(Math.abs));
    if (Math.abs(net) > 1e-6 * most)
      return [
        {
          path: "openings",
          found: `${openings.map(({ name }) => name).join(", ")}: velocities that don't cancel, and no pressure`,
          allowed: "a pressure at one opening of each connected lumen, or flows whose sum is 0",
        },
      ];
  }
  return [];
}

/** [ny*nx] number of the connected lumen that a cell belongs to, from 1; 0 in the wall and beyond openings. */
function connectedParts({ nx, ny, west, south, area, beyond }: CutCellMesh): Int32Array {
  const part = new Int32Array(nx * ny);
  let count = 0;
  const stack: number[] = [];
  for (let start = nx + 1; start < nx * (ny - 1) - 1; start++) {
    if (part[start] !== 0 || area[start] === 0 || beyond[start]! >= 0) continue;
    count++;
    stack.push(start);
    part[start] = count;
    while (stack.length > 0) {
      const k = stack.pop()!;
      for (const [next, open] of [
        [k - 1, west[k]!],
        [k + 1, west[k + 1]!],
        [k - nx, south[k]!],
        [k + nx, south[k + nx]!],
      ] as const) {
        if (open === 0 || part[next] !== 0 || beyond[next]! >= 0) continue;
        part[next] = count;
        stack.push(next);
      }
    }
  }
  return part;
}

/** The lumen that opening `index` cuts, or 0. */
function partBehind(
  { nx, dx, west, south, beyond, distance }: CutCellMesh,
  part: Int32Array,
  index: number,
): number {
  for (let k = nx; k < part.length - nx; k++) {
    if (beyond[k] !== index) continue;
    // Where there is no blood behind the opening, its own cut must not count as blood.
    for (const [next, open] of [
      [k - 1, west[k]!],
      [k + 1, west[k + 1]!],
      [k - nx, south[k]!],
      [k + nx, south[k + nx]!],
    ] as const)
      if (open > 0 && part[next]! > 0 && distance[next]! < 0.4 * dx) return part[next]!;
  }
  return 0;
}
