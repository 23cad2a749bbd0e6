/** Cells that fill their tissue: each has the room that is nearer to its middle than to any other's. */
import { entryAt } from "../../sim/checked/present.ts";
import type { Spot } from "../drawing/curve-drawing.ts";

/** Plane units: half the room that a cell takes at most, and how far its neighbours are sought. */
export const CELL_ROOM = [104, 78] as const;
const NEAR = 300;

/**
 * @param apart plane units left free between two cells
 * @returns the cell's corners, from its middle
 */
export function cellAround([x, y]: Spot, middles: readonly Spot[], apart: number): readonly Spot[] {
  const [w, h] = CELL_ROOM;
  let corners: readonly Spot[] = [
    [-w, -h],
    [w, -h],
    [w, h],
    [-w, h],
  ];
  for (const [ox, oy] of middles) {
    const [dx, dy] = [ox - x, oy - y];
    const far = Math.hypot(dx, dy);
    if (far > 0 && far < NEAR) corners = cut(corners, [dx / far, dy / far], far / 2 - apart / 2);
  }
  return corners;
}

/** What of a convex shape lies less than `reach` along a direction. */
function cut(corners: readonly Spot[], [nx, ny]: Spot, reach: number): readonly Spot[] {
  const kept: Spot[] = [];
  const beyond = ([x, y]: Spot) => x * nx + y * ny - reach;
  corners.forEach((from, i) => {
    const to = entryAt(corners, (i + 1) % corners.length);
    const [a, b] = [beyond(from), beyond(to)];
    if (a <= 0) kept.push(from);
    if (a > 0 !== b > 0) {
      const w = a / (a - b);
      kept.push([from[0] + (to[0] - from[0]) * w, from[1] + (to[1] - from[1]) * w]);
    }
  });
  return kept;
}
