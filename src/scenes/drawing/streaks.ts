/**
 * Dots of blood as sprites: drawn longer the faster they go. Oxygen-poor blood is a filled drop, oxygen-rich blood a ring:
 * the second channel beside colour. Where nothing may move they become darts, filled or open, that point the way.
 */
import { Container, DOMAdapter, Sprite, Texture } from "pixi.js";
import { entryAt } from "../../sim/checked/present.ts";

const STREAK_SIZE = 24;

type Ink = CanvasRenderingContext2D | OffscreenCanvasRenderingContext2D;

function drawn(paint: (ink: Ink) => void): Texture {
  const canvas = DOMAdapter.get().createCanvas(STREAK_SIZE, STREAK_SIZE);
  const ink = canvas.getContext("2d") as Ink;
  paint(ink);
  return Texture.from(canvas as HTMLCanvasElement, true);
}

export type Shape = "drop" | "ring" | "dart" | "openDart";

/** The shape for blood, rich or poor in oxygen, moving or held still. */
export const shapeOf = (rich: boolean, still: boolean): Shape =>
  still ? (rich ? "openDart" : "dart") : rich ? "ring" : "drop";

/** CSS px; `angle` in radians; `length` and `width` of the shape. `colour` as 0xrrggbb; `alpha` is 1 when left out. */
interface Streak {
  readonly x: number;
  readonly y: number;
  readonly angle: number;
  readonly length: number;
  readonly width: number;
  readonly colour: number;
  readonly shape: Shape;
  readonly alpha?: number;
}

export interface Streaks {
  readonly view: Container;
  /** Makes room for `count` streaks and hides the rest. */
  resize(count: number): void;
  set(index: number, streak: Streak): void;
  release(): void;
}

export function streaks(): Streaks {
  const view = new Container();
  const middle = STREAK_SIZE / 2;
  const dartPath = (ink: Ink) => {
    ink.beginPath();
    ink.moveTo(STREAK_SIZE - 3, middle);
    ink.lineTo(4, STREAK_SIZE - 4);
    ink.lineTo(8, middle);
    ink.lineTo(4, 4);
    ink.closePath();
  };
  const textures: Readonly<Record<Shape, Texture>> = {
    drop: drawn((ink) => {
      ink.fillStyle = "#fff";
      ink.arc(middle, middle, middle - 1, 0, 2 * Math.PI);
      ink.fill();
    }),
    ring: drawn((ink) => {
      ink.strokeStyle = "#fff";
      ink.lineWidth = 6;
      ink.arc(middle, middle, middle - 4, 0, 2 * Math.PI);
      ink.stroke();
    }),
    dart: drawn((ink) => {
      ink.fillStyle = "#fff";
      dartPath(ink);
      ink.fill();
    }),
    openDart: drawn((ink) => {
      ink.strokeStyle = "#fff";
      ink.lineWidth = 3.2;
      ink.lineJoin = "round";
      dartPath(ink);
      ink.stroke();
    }),
  };
  const sprites: Sprite[] = [];
  return {
    view,
    resize(count) {
      while (sprites.length < count) {
        const sprite = new Sprite(textures.drop);
        sprite.anchor.set(0.5);
        sprites.push(sprite);
        view.addChild(sprite);
      }
      for (let i = 0; i < sprites.length; i++) entryAt(sprites, i).visible = i < count;
    },
    set(index, { x, y, angle, length, width, colour, shape, alpha = 1 }) {
      const sprite = entryAt(sprites, index);
      const texture = textures[shape];
      if (sprite.texture !== texture) sprite.texture = texture;
      sprite.position.set(x, y);
      sprite.rotation = angle;
      sprite.scale.set(length / STREAK_SIZE, width / STREAK_SIZE);
      sprite.tint = colour;
      sprite.alpha = alpha;
      sprite.visible = alpha > 0;
    },
    release() {
      for (const texture of Object.values(textures)) texture.destroy(true);
    },
  };
}
