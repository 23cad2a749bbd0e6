/** Dims everything but the one thing pointed at, to 30 % or less, with a slow fade. */
import { Graphics } from "pixi.js";
import { ease } from "../theme/motion.ts";
import type { Theme } from "../theme/theme.ts";

/** What is left of the rest: 1 - this. */
const COVER = 0.72;
/** Rings in which the edge of the light softens. */
const SOFT = 4;

interface Lit {
  /** mm */
  readonly centre: readonly [number, number];
  readonly radius: number;
}

export interface VeilLayer {
  readonly view: Graphics;
  draw(lit: Lit | null, elapsed: number, theme: Theme): void;
}

export function veilLayer(): VeilLayer {
  const view = new Graphics();
  let shown = 0;
  let last: Lit | null = null;
  let key = "";
  view.alpha = 0;
  return {
    view,
    draw(lit, elapsed, theme) {
      if (lit) last = lit;
      shown = ease(shown, lit ? 1 : 0, elapsed);
      view.alpha = shown;
      view.visible = shown > 0.01;
      if (!last) return;
      const now = `${last.centre.join()},${last.radius},${theme.name}`;
      if (now === key) return;
      key = now;
      view.clear();
      const [x, y] = last.centre;
      const far = 4000;
      // Rings add up to the full cover a few millimetres outside the light.
      for (let ring = 0; ring < SOFT; ring++) {
        const alpha = 1 - (1 - COVER) ** (1 / SOFT);
        view
          .rect(x - far, y - far, 2 * far, 2 * far)
          .fill({ color: theme.colour.stageDeep, alpha })
          .circle(x, y, last.radius + 3 + 1.5 * ring)
          .cut();
      }
      view.circle(x, y, last.radius + 3).stroke({ width: 0.7, color: theme.colour.accent });
    },
  };
}
