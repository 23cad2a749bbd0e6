/** Clots as dark, uneven lumps of their true size. */
import type { Graphics } from "pixi.js";
import type { LooseBody } from "../../chain/frame.ts";
import type { Theme } from "../theme/theme.ts";

const CORNERS = 14;

/** In the plane's mm. The lumps' unevenness belongs to their place in the list, so it never flickers. */
export function drawClots(ink: Graphics, clots: readonly LooseBody[], theme: Theme): void {
  ink.clear();
  clots.forEach(({ x, y, diameter, angle, place }, index) => {
    if (place !== "pathway") return;
    const points: number[] = [];
    for (let k = 0; k < CORNERS; k++) {
      const turn = angle + (2 * Math.PI * k) / CORNERS;
      const radius = (diameter / 2) * (0.93 + 0.07 * Math.sin(5 * index + 2.4 * k));
      points.push(x + radius * Math.cos(turn), y + radius * Math.sin(turn));
    }
    ink
      .poly(points, true)
      .fill({ color: theme.colour.clot })
      .stroke({ width: Math.max(0.3, diameter * 0.1), color: theme.colour.ink, alpha: 0.9, join: "round" });
  });
}
