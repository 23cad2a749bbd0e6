/** Lines along the flow of this moment, evenly set, with arrows: what teaches when nothing may move. */
import type { Graphics } from "pixi.js";
import { entryAt } from "../../sim/checked/present.ts";
import type { FieldShape, FlowField } from "../../sim/flow-field/flow-field.ts";
import type { Streamline } from "../../sim/flow-field/streamlines.ts";
import { sampleVelocity } from "../../sim/flow-field/streamlines.ts";
import type { Opening } from "../../sim/geometry/geometry.ts";
import type { Theme } from "../theme/theme.ts";
import { beyondOpening } from "./drawn-plane.ts";

/** The shape without what lies beyond its openings: there no line belongs. */
export function upTo(shape: FieldShape, openings: readonly Opening[]): FieldShape {
  const distance = shape.distance.map((value, k) => {
    const x = shape.originX + (k % shape.nx) * shape.dx;
    const y = shape.originY + Math.floor(k / shape.nx) * shape.dx;
    return value < 0 && openings.some((opening) => beyondOpening(opening, x, y, 0, 0)) ? shape.dx : value;
  });
  return { ...shape, distance };
}

/** mm between arrows on a line */
const ARROW_EVERY = 16;

/** `width` in mm. Arrows grow with the speed, so the second channel beside the line's place is size. */
export function drawStreamlines(
  ink: Graphics,
  lines: readonly Streamline[],
  { shape, field }: { readonly shape: FieldShape; readonly field: FlowField },
  width: number,
  theme: Theme,
): void {
  ink.clear();
  for (const { points } of lines) {
    ink
      .poly(points, false)
      .stroke({ width, color: theme.colour.ink, alpha: 0.75, join: "round", cap: "round" });
  }
  for (const { points } of lines) {
    let run = ARROW_EVERY / 2;
    for (let k = 2; k < points.length; k += 2) {
      const dx = entryAt(points, k) - entryAt(points, k - 2);
      const dy = entryAt(points, k + 1) - entryAt(points, k - 1);
      const length = Math.hypot(dx, dy);
      run += length;
      if (run < ARROW_EVERY || length === 0) continue;
      run = 0;
      const [u, v] = sampleVelocity(shape, field, entryAt(points, k), entryAt(points, k + 1));
      const size = width * (1.5 + 4 * Math.min(0.5, Math.hypot(u, v)));
      const [cx, cy] = [dx / length, dy / length];
      const [x, y] = [entryAt(points, k), entryAt(points, k + 1)];
      ink
        .poly([
          x + 1.4 * size * cx,
          y + 1.4 * size * cy,
          x - size * cx - size * cy,
          y - size * cy + size * cx,
          x - size * cx + size * cy,
          y - size * cy - size * cx,
        ])
        .fill({ color: theme.colour.ink });
    }
  }
}
