/** What the pathway scene stands on: the stage's light behind it, and the quiet ground under the grade line and under controls. */
import type { Sprite } from "pixi.js";
import { depthLayer, shoreLayer } from "../layers/depth-layer.ts";
import type { Box, Viewport } from "../scene.ts";
import type { Theme } from "../theme/theme.ts";

/** px across the kept ground where a chip draws it larger */
const GROUND = 256;

export interface Grounds {
  readonly behind: Sprite;
  /** over the vessels, under lines and words */
  readonly before: readonly Sprite[];
  /**
   * @param under what the picture sinks into; null for nothing
   * @param edge  over which veins that run on to the head fade before they come under controls or key
   */
  draw(viewport: Viewport, under: Box | null, edge: Box, theme: Theme): void;
  release(): void;
}

export function grounds(): Grounds {
  const stage = depthLayer();
  const shore = shoreLayer();
  const sky = shoreLayer("above");
  return {
    behind: stage.view,
    before: [shore.view, sky.view],
    draw({ full, clear, meshes, dense }, under, edge, theme) {
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
