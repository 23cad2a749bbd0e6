/** The stage's ground: a soft pool of light behind the scene, so that it has depth without a pattern. */
import { DOMAdapter, Sprite, Texture } from "pixi.js";
import { present } from "../../sim/checked/present.ts";
import type { Box } from "../scene.ts";
import { seeThrough } from "../theme/colour.ts";
import type { Theme } from "../theme/theme.ts";

export interface DepthLayer {
  readonly view: Sprite;
  /**
   * @param light where the pool lies
   * @param texels of the kept picture in a CSS pixel
   */
  draw(full: Box, light: Box, texels: number, theme: Theme): void;
  release(): void;
}

const SIZE = 256;

export function depthLayer(): DepthLayer {
  const view = new Sprite();
  let texture: Texture | null = null;
  let drawn = "";
  return {
    view,
    draw(full, light, texels, theme) {
      const key = [...Object.values(full), ...Object.values(light), texels, theme.name].join();
      if (key === drawn) return;
      drawn = key;
      const width = Math.max(1, Math.round(full.width * texels));
      const height = Math.max(1, Math.round(full.height * texels));
      const canvas = DOMAdapter.get().createCanvas(width, height) as HTMLCanvasElement;
      const ink = present(canvas.getContext("2d"));
      ink.scale(width, height);
      const x = (light.x + light.width / 2) / full.width;
      const y = (light.y + light.height / 2) / full.height;
      const pool = ink.createRadialGradient(x, y, 0, x, y, 0.72);
      pool.addColorStop(0, theme.name === "dark" ? "#16203c" : "#ffffff");
      pool.addColorStop(0.45, theme.colour.stage);
      pool.addColorStop(1, theme.colour.stageDeep);
      ink.fillStyle = pool;
      ink.fillRect(0, 0, 1, 1);
      texture?.destroy(true);
      texture = Texture.from(canvas, true);
      view.texture = texture;
      view.position.set(full.x, full.y);
      view.width = full.width;
      view.height = full.height;
    },
    release() {
      texture?.destroy(true);
    },
  };
}

export interface ShoreLayer {
  readonly view: Sprite;
  /**
   * Covers the canvas from a little above `box` to its bottom edge, from clear to the stage's deepest colour; or from
   * its top edge to the end of `box`, over which it clears.
   */
  draw(full: Box, box: Box, theme: Theme): void;
  release(): void;
}

/**
 * The ground under the grade line, and (`above`) the one behind controls and key: the picture sinks into it, so that
 * lines and words stand on a quiet colour.
 */
export function shoreLayer(side: "below" | "above" = "below"): ShoreLayer {
  const canvas = DOMAdapter.get().createCanvas(1, SIZE) as HTMLCanvasElement;
  const ink = present(canvas.getContext("2d"));
  const texture = Texture.from(canvas, true);
  const view = new Sprite(texture);
  let drawn = "";
  return {
    view,
    draw(full, box, theme) {
      const soft = side === "below" ? box.height * 0.3 : box.height;
      view.position.set(full.x, side === "below" ? box.y - soft : full.y);
      view.width = full.width;
      view.height = side === "below" ? full.y + full.height - view.y : box.y + box.height;
      const key = `${theme.name} ${soft / view.height}`;
      if (key === drawn) return;
      drawn = key;
      const fall = ink.createLinearGradient(0, side === "below" ? 0 : SIZE, 0, side === "below" ? SIZE : 0);
      const { stageDeep } = theme.colour;
      fall.addColorStop(0, seeThrough(stageDeep, 0));
      fall.addColorStop(Math.min(0.9, (1.25 * soft) / view.height), stageDeep);
      ink.clearRect(0, 0, 1, SIZE);
      ink.fillStyle = fall;
      ink.fillRect(0, 0, 1, SIZE);
      texture.source.update();
    },
    release() {
      texture.destroy(true);
    },
  };
}
