/** Closed shapes with a soft round, lit from the upper left. */
import type { Graphics } from "pixi.js";
import { entryAt } from "../../sim/checked/present.ts";
import type { Tissue } from "../anatomy/tones.ts";
import { type Spot, traceClosed } from "../drawing/curve-drawing.ts";
import { mix } from "../theme/colour.ts";

/** @param round CSS px by which the light keeps from the edge, in steps; `width` CSS px of the line around it */
export function softShape(
  ink: Graphics,
  outline: readonly Spot[],
  { shade, body, light, edge }: Tissue,
  { round, width }: { readonly round: number; readonly width: number },
): void {
  traceClosed(ink, outline);
  ink.fill({ color: shade }).stroke({ color: edge, width, join: "round" });
  const [xs, ys] = [outline.map(([x]) => x), outline.map(([, y]) => y)];
  const least = Math.min(Math.max(...xs) - Math.min(...xs), Math.max(...ys) - Math.min(...ys));
  for (const part of [0.3, 0.65, 1]) {
    const inset = part * Math.min(round, 0.16 * least);
    traceClosed(
      ink,
      shrunk(outline, inset).map(([x, y]): Spot => [x - 0.5 * inset, y - 0.5 * inset]),
    );
    ink.fill({ color: mix(body, light, part), alpha: 0.5 });
  }
}

/** Each point moved inwards by a width, along the outline's normal. */
function shrunk(outline: readonly Spot[], width: number): Spot[] {
  const n = outline.length;
  const around = (i: number): Spot => entryAt(outline, (i + n) % n);
  const area = outline.reduce((sum, [x, y], i) => {
    const [nx, ny] = around(i + 1);
    return sum + x * ny - nx * y;
  }, 0);
  return outline.map(([x, y], i): Spot => {
    const [[ax, ay], [bx, by]] = [around(i - 1), around(i + 1)];
    const step = (Math.sign(area) * width) / (Math.hypot(bx - ax, by - ay) || 1);
    return [x - step * (by - ay), y + step * (bx - ax)];
  });
}
