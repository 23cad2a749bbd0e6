/** A picture of muscle cut into strips across the leg, each of which follows the vein's wall as muscle presses it in, and its tendon as that rises. */
import { Container, Matrix, Rectangle, Sprite, Texture } from "pixi.js";
import { entryAt } from "../../sim/checked/present.ts";
import { type Bounds, type Ink, inkFor } from "../anatomy/painted-sheet.ts";
import { footTurn, riseAt, turned } from "./foot.ts";
import type { Ends } from "./strip-ends.ts";

/** Heights between which muscle moves, and to which its tendon reaches; above one strip is enough. */
const [TOP, BOTTOM, LOWEST] = [90, 670, 1000];
/** Plane units: from the middle of the leg's plane to the tendon. */
const TENDON = 218;

const LOWER = 44;
/** Between strips of so many plane units. */
const STEP = 4;
const CUTS: readonly number[] = [
  0,
  ...Array.from({ length: Math.floor((BOTTOM - TOP) / STEP) + 1 }, (_, i) => TOP + i * STEP),
  ...Array.from({ length: LOWER }, (_, i) => BOTTOM + ((i + 1) * (LOWEST - BOTTOM)) / LOWER),
];

export interface MuscleStrips {
  readonly view: Container;
  /** Anew. @param density device pixels a plane unit */
  paint(density: number, paint: (ink: Ink) => void): void;
  /** @param pressed 0..1: how far the vein is flattened */
  bend(pressed: number): void;
  release(): void;
}

interface Room {
  /** plane units that the picture takes */
  readonly left: number;
  readonly right: number;
  /** with the tendon, and heel and all as the foot turns */
  readonly rises?: true;
}

export function muscleStrips({ left, right, rises }: Room, ends: Ends): MuscleStrips {
  const view = new Container();
  const rest = CUTS.map((y) => ends(y, 0));
  const strips = CUTS.slice(1).map(() => {
    const sprite = new Sprite();
    view.addChild(sprite);
    return sprite;
  });
  let textures: readonly Texture[] = [];
  let size = 1;
  const matrix = new Matrix();
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
      textures = strips.map((_, i) => {
        const [high, low] = [entryAt(CUTS, i) * scale, entryAt(CUTS, i + 1) * scale];
        // A pixel more, under the next one, so that no seam shows.
        const frame = new Rectangle(0, high, source.width, Math.min(low + 1, source.height) - high);
        return new Texture({ source, frame });
      });
      size = 1 / scale;
      strips.forEach((strip, i) => {
        strip.texture = entryAt(textures, i);
      });
    },
    bend(pressed) {
      const turn = rises ? footTurn(pressed) : 0;
      const moved = CUTS.map((each) => {
        const y = rises ? each - riseAt(each, pressed) : each;
        const [far, near] = ends(y, pressed);
        const back = turned([TENDON, y], turn)[0] - TENDON;
        return { y, far: far + back, near: near + back };
      });
      strips.forEach((strip, i) => {
        const [high, low] = [entryAt(CUTS, i), entryAt(CUTS, i + 1)];
        const [[farHigh, nearHigh], [farLow]] = [entryAt(rest, i), entryAt(rest, i + 1)];
        const [above, below] = [entryAt(moved, i), entryAt(moved, i + 1)];
        const wide = (above.near - above.far) / (nearHigh - farHigh);
        // Sheared, so that its far end goes on in the next one's.
        const shear = (below.far - above.far - wide * (farLow - farHigh)) / (low - high);
        const tall = (below.y - above.y) / (low - high);
        matrix.set(size * wide, 0, size * shear, size * tall, above.far + wide * (left - farHigh), above.y);
        strip.setFromMatrix(matrix);
      });
    },
    release,
  };
}
