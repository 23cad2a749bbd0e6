/** Tracers without shaders: fewer, as streaks; for the canvas renderer. A ring still tells the liver's blood. */
import { ORIGINS, type Tracers } from "../../sim/tracers/tracers.ts";
import { shapeOf, streaks } from "../drawing/streaks.ts";
import type { TracerLayer } from "./tracers.ts";

/** More than this the canvas renderer cannot move smoothly. */
const MOST = 1500;
const LIVER = ORIGINS.indexOf("liver");

export function tracerSprites(): TracerLayer {
  const pool = streaks();
  return {
    view: pool.view,
    draw(tracers: Tracers, colours, halfWidth, longest, share, alpha) {
      const count = Math.min(MOST, Math.floor(tracers.count * share));
      pool.resize(count);
      pool.view.visible = count > 0;
      const { position, trail, trailLength, origin } = tracers;
      for (let i = 0; i < count; i++) {
        const x = position[2 * i]!;
        const y = position[2 * i + 1]!;
        const end = 2 * (trailLength * (i + 1) - 1);
        const dx = x - trail[end]!;
        const dy = y - trail[end + 1]!;
        const length = Math.min(longest, Math.hypot(dx, dy)) + 2 * halfWidth;
        const packed = colours[i]!;
        const colour = ((packed & 0xff) << 16) | (packed & 0xff00) | ((packed >> 16) & 0xff);
        pool.set(
          i,
          x,
          y,
          Math.atan2(dy, dx),
          length,
          2 * halfWidth,
          colour,
          shapeOf(origin[i] === LIVER, false),
          alpha,
        );
      }
    },
    release: () => pool.release(),
  };
}
