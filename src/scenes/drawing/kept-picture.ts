/** Parts of a scene that the processor keeps as one picture, pixel on pixel of the screen: it lays that in a fraction of the time in which it draws them. */
import { Container, RenderTexture, Sprite } from "pixi.js";
import type { Viewport } from "../scene.ts";

export interface KeptPicture {
  readonly view: Container;
  /** @param viewport null: the parts are shown as they are; `anew`: what is kept is painted again */
  draw(viewport: Viewport | null, anew?: boolean): void;
  release(): void;
}

/** px by which the picture grows at a time */
const STEP = 64;

/** In CSS px. */
export function keptPicture(...parts: readonly Container[]): KeptPicture {
  const [view, live, sprite] = [new Container(), new Container(), new Sprite()];
  live.addChild(...parts);
  view.addChild(live);
  let texture: RenderTexture | null = null;

  /** A picture at least so large, device px. */
  const roomFor = (wide: number, high: number, dense: number): RenderTexture => {
    const [width, height] = [wide, high].map((size) => (STEP * Math.ceil(size / STEP)) / dense) as [
      number,
      number,
    ];
    const had = texture;
    if (had && had.source.resolution === dense && had.width >= width && had.height >= height) return had;
    had?.destroy(true);
    texture = RenderTexture.create({ width, height, resolution: dense });
    sprite.texture = texture;
    return texture;
  };

  return {
    view,
    draw(viewport, anew = false) {
      const paint = viewport?.paintInto;
      const loose = live.parent !== null;
      if (!viewport || !paint) {
        if (loose) return;
        view.removeChild(sprite);
        view.addChild(live);
        return;
      }
      if (!loose && !anew) return;
      if (loose) {
        view.removeChild(live);
        view.addChild(sprite);
      }
      const { full, dense } = viewport;
      const { minX, minY, maxX, maxY } = live.getBounds();
      const left = Math.floor(dense * Math.max(full.x, minX));
      const top = Math.floor(dense * Math.max(full.y, minY));
      const wide = Math.ceil(dense * Math.min(full.x + full.width, maxX)) - left;
      const high = Math.ceil(dense * Math.min(full.y + full.height, maxY)) - top;
      sprite.visible = wide > 0 && high > 0;
      if (!sprite.visible) return;
      sprite.position.set(left / dense, top / dense);
      paint(live, roomFor(wide, high, dense), left / dense, top / dense);
    },
    release() {
      if (!live.parent) live.destroy({ children: true, context: true });
      texture?.destroy(true);
    },
  };
}
