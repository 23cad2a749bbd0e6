/** A picture of muscle cut into strips across the leg, each of which follows the vein's wall as muscle presses it in. */
import { Container, Rectangle, Sprite, Texture } from "pixi.js";
import { entryAt } from "../../sim/checked/present.ts";
import { type Bounds, type Ink, inkFor } from "../anatomy/painted-sheet.ts";
import type { Ends } from "./strip-ends.ts";
import { CALF } from "./vein.ts";

/** Between strips of so many plane units; above and below the muscle one is enough. */
const cutsOf = (step: number): readonly number[] => [
  0,
  ...Array.from({ length: Math.floor((CALF.bottom - CALF.top) / step) + 1 }, (_, i) => CALF.top + i * step),
  1000,
];

export interface MuscleStrips {
  readonly view: Container;
  /** Anew. @param density device pixels a plane unit */
  paint(density: number, paint: (ink: Ink) => void): void;
  /** @param pressed 0..1: how far the vein is flattened */
  bend(pressed: number): void;
  release(): void;
}

/** @param left,right plane units that the picture takes. @param step of a strip: the smaller the leg stands, the more, or strips are less than a pixel */
export function muscleStrips(
  { left, right, step }: Readonly<Record<"left" | "right" | "step", number>>,
  ends: Ends,
): MuscleStrips {
  const view = new Container();
  const edges = cutsOf(step);
  const cuts = edges.slice(1).map((low, i) => {
    const high = entryAt(edges, i);
    const y = (high + low) / 2;
    return { high, low, y, rest: ends(y, 0) };
  });
  const strips = cuts.map(({ high }) => {
    const sprite = new Sprite();
    sprite.position.y = high;
    view.addChild(sprite);
    return sprite;
  });
  let textures: readonly Texture[] = [];
  let size = 1;
  const release = () => {
    textures[0]?.source.destroy();
    for (const texture of textures) texture.destroy();
  };
  return {
    view,
    paint(density, paint) {
      const bounds: Bounds = [left, -1000, right, 0];
      // Cuts fall between pixels of the picture.
      const scale = Math.max(1, Math.round(density * step)) / step;
      const ink = inkFor(bounds, scale);
      ink.scale(1, -1);
      paint(ink);
      release();
      const { source } = Texture.from(ink.canvas, true);
      textures = cuts.map(
        ({ high, low }) =>
          new Texture({
            source,
            frame: new Rectangle(0, high * scale, source.width, (low - high) * scale),
          }),
      );
      size = 1 / scale;
      strips.forEach((strip, i) => {
        strip.texture = entryAt(textures, i);
        strip.scale.y = size;
      });
    },
    bend(pressed) {
      cuts.forEach(({ y, rest: [far, near] }, i) => {
        const inside = y > CALF.top && y < CALF.bottom;
        const [movedFar, movedNear] = inside ? ends(y, pressed) : [far, near];
        const factor = inside ? (movedNear - movedFar) / (near - far) : 1;
        entryAt(strips, i).position.x = movedFar + (left - far) * factor;
        entryAt(strips, i).scale.x = size * factor;
      });
    },
    release,
  };
}
