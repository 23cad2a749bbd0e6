/** A picture of muscle cut into strips across the leg, each of which follows the vein's wall as muscle presses it in. */
import { Container, Rectangle, Sprite, Texture } from "pixi.js";
import { entryAt } from "../../sim/checked/present.ts";
import { type Bounds, type Ink, inkFor } from "../anatomy/painted-sheet.ts";
import type { Spot } from "../drawing/curve-drawing.ts";
import type { Part } from "./rounded.ts";
import { CALF, halfWidth, narrowing, placeInLeg } from "./vein.ts";

/** Plane units of a strip. */
const STEP = 4;
/** Between strips; above and below the muscle one is enough. */
const CUTS = [
  0,
  ...Array.from({ length: (CALF.bottom - CALF.top) / STEP + 1 }, (_, i) => CALF.top + i * STEP),
  1000,
];
/** Plane units by which muscle bulges against its fascia at full squeeze, for each by which it presses the vein in. */
const BULGE = 0.35;

export interface MuscleStrips {
  readonly view: Container;
  /** Anew. @param density device pixels a plane unit */
  paint(density: number, paint: (ink: Ink) => void): void;
  bend(squeeze: number): void;
  release(): void;
}

/**
 * @param side   of the vein on which it lies: -1 behind, 1 in front
 * @param border what it presses against on its other side
 * @param gives  whether that gives way
 */
export function muscleStrips(
  side: -1 | 1,
  { left, right }: { readonly left: number; readonly right: number },
  border: Part,
  gives: boolean,
): MuscleStrips {
  const view = new Container();
  const cuts = CUTS.slice(1).map((low, i) => {
    const high = entryAt(CUTS, i);
    const y = (high + low) / 2;
    const wall = placeInLeg(y, side * halfWidth(y, 0)).spot[0];
    return { high, low, y, far: outerAt(border.left, y), wall };
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
      const scale = Math.max(1, Math.round(density * STEP)) / STEP;
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
    bend(squeeze) {
      cuts.forEach(({ y, far, wall }, i) => {
        const pressed = narrowing(y, squeeze);
        const moved = far + (gives ? side * BULGE * pressed : 0);
        const factor = pressed > 0 ? (wall - side * pressed - moved) / (wall - far) : 1;
        entryAt(strips, i).position.x = moved + (left - far) * factor;
        entryAt(strips, i).scale.x = size * factor;
      });
    },
    release,
  };
}

/** x of a border at a height. */
function outerAt(border: readonly Spot[], y: number): number {
  return border.reduce((near, spot) => (Math.abs(spot[1] - y) < Math.abs(near[1] - y) ? spot : near))[0];
}
