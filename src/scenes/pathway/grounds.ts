/** What the pathway scene stands on: the stage's light behind it, and the quiet ground under the grade line and under controls. */
import type { Sprite } from "pixi.js";
import { depthLayer, shoreLayer } from "../layers/depth-layer.ts";
import type { Box, Viewport } from "../scene.ts";
import { ease } from "../theme/motion.ts";
import type { Theme } from "../theme/theme.ts";

/** px across the kept ground where a chip draws it larger */
const GROUND = 256;

export interface Grounds {
  readonly behind: Sprite;
  /** over the vessels, under lines and words */
  readonly before: readonly Sprite[];
  /** @param first one of the first drawings: the grounds come with what needs them */
  draw(viewport: Viewport, first: boolean, sinks: Sinks, theme: Theme): void;
  release(): void;
}

export interface Sinks {
  /** what the picture sinks into; null for nothing */
  readonly under: Box | null;
  /** over which veins that run on to the head fade before they come under controls or key */
  readonly edge: Box;
}

export function grounds(): Grounds {
  const stage = depthLayer();
  const shore = shoreLayer();
  const sky = shoreLayer("above");
  const all = [stage.view, shore.view, sky.view];
  let shade = 1;
  return {
    behind: stage.view,
    before: [shore.view, sky.view],
    draw({ full, clear, meshes, dense, elapsed }, first, { under, edge }, theme) {
      shade = first ? 0 : ease(shade, 1, elapsed);
      for (const view of all) [view.alpha, view.visible] = [shade, !first];
      if (first) return;
      // The processor lays pixel on pixel; a chip draws a small picture as large as it likes.
      const texels = meshes ? GROUND / full.width : dense;
      stage.draw(full, { ...clear, height: clear.height * 0.7 }, texels, theme);
      shore.view.visible = under !== null;
      if (under) shore.draw(full, under, theme);
      sky.view.visible = edge.y > full.y;
      if (sky.view.visible) sky.draw(full, edge, theme);
    },
    release() {
      stage.release();
      shore.release();
      sky.release();
    },
  };
}
