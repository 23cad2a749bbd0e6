/** Marks that move over the tissue: each kind is painted once, in white and greys, and takes the colour that it is given. */
import { Container, Sprite, Texture } from "pixi.js";
import { entryAt } from "../../sim/checked/present.ts";
import { type Ink, inkFor } from "../anatomy/painted-sheet.ts";

/** Device pixels of a plane unit. */
const DENSE = 1.6;
/** Half a mark's picture, plane units. */
const ROOM = 64;

type Shape = "oxygenated" | "deoxygenated" | "protein" | "drop" | "arrow";

interface Mark {
  readonly x: number;
  readonly y: number;
  readonly angle: number;
  readonly shape: Shape;
  /** of the size that it is painted in */
  readonly size?: number;
  readonly colour: number;
}

export interface Marks {
  readonly view: Container;
  /** Sets these and hides all others. */
  show(marks: readonly Mark[]): void;
  release(): void;
}

export function marks(): Marks {
  const view = new Container();
  const textures = Object.fromEntries(
    Object.entries(PAINT).map(([shape, paint]) => {
      const ink = inkFor([-ROOM, -ROOM, ROOM, ROOM], DENSE);
      ink.scale(1, -1);
      paint(ink);
      return [shape, Texture.from(ink.canvas, true)];
    }),
  ) as Readonly<Record<Shape, Texture>>;
  const sprites: Sprite[] = [];
  return {
    view,
    show(shown) {
      while (sprites.length < shown.length) {
        const sprite = new Sprite();
        sprite.anchor.set(0.5);
        sprites.push(sprite);
        view.addChild(sprite);
      }
      sprites.forEach((sprite, i) => {
        sprite.visible = i < shown.length;
      });
      shown.forEach(({ x, y, angle, shape, size = 1, colour }, i) => {
        const sprite = entryAt(sprites, i);
        const texture = textures[shape];
        if (sprite.texture !== texture) sprite.texture = texture;
        sprite.position.set(x, y);
        sprite.rotation = angle;
        sprite.scale.set(size / DENSE);
        sprite.tint = colour;
      });
    },
    release() {
      for (const texture of Object.values(textures)) texture.destroy(true);
    },
  };
}

/** A red cell bent to a bullet by the narrow vessel: round in front, hollow behind. */
function paintRedCell(ink: Ink, pale: number): void {
  ink.beginPath();
  ink.moveTo(-40, -28);
  ink.bezierCurveTo(-8, -35, 36, -26, 40, 0);
  ink.bezierCurveTo(36, 26, -8, 35, -40, 28);
  ink.bezierCurveTo(-48, 22, -22, 16, -20, 0);
  ink.bezierCurveTo(-22, -16, -48, -22, -40, -28);
  ink.closePath();
  ink.fillStyle = "#c4c4c4";
  ink.fill();
  ink.save();
  ink.clip();
  // Thin in its middle, where more light comes through.
  const thin = ink.createRadialGradient(4, -6, 2, 6, 0, 36);
  thin.addColorStop(0, `rgba(255,255,255,${pale})`);
  thin.addColorStop(0.5, `rgba(255,255,255,${0.7 * pale})`);
  thin.addColorStop(1, "rgba(255,255,255,0)");
  ink.fillStyle = thin;
  ink.fillRect(-ROOM, -ROOM, 2 * ROOM, 2 * ROOM);
  const under = ink.createLinearGradient(0, -4, 0, 34);
  under.addColorStop(0, "rgba(0,0,0,0)");
  under.addColorStop(1, "rgba(0,0,0,0.3)");
  ink.fillStyle = under;
  ink.fillRect(-ROOM, -ROOM, 2 * ROOM, 2 * ROOM);
  ink.restore();
  ink.lineWidth = 2.4;
  ink.strokeStyle = "#8a8a8a";
  ink.stroke();
}

/** Half a drop, plane units. */
const DROP = 9.5;

function paintDrop(ink: Ink): void {
  const round = ink.createRadialGradient(-3, -3, 1, 0, 0, DROP);
  round.addColorStop(0, "#fff");
  round.addColorStop(0.25, "#fff");
  round.addColorStop(0.5, "#d8d8d8");
  round.addColorStop(1, "#a4a4a4");
  ink.beginPath();
  ink.arc(0, 0, DROP, 0, 2 * Math.PI);
  ink.fillStyle = round;
  ink.fill();
}

/** Plane units of an arrow of size 1. */
export const ARROW_LONG = 100;

function paintArrow(ink: Ink): void {
  ink.beginPath();
  ink.moveTo(-50, -13);
  ink.lineTo(4, -13);
  ink.lineTo(4, -32);
  ink.lineTo(50, 0);
  ink.lineTo(4, 32);
  ink.lineTo(4, 13);
  ink.lineTo(-50, 13);
  ink.closePath();
  ink.fillStyle = "#fff";
  ink.fill();
}

/** Albumin is heart-shaped: three lobes. */
const LOBES = [
  [-2.4, -1.8],
  [2.6, -1.6],
  [0, 2.4],
] as const;

function paintProtein(ink: Ink): void {
  for (const [radius, grey] of [
    [4.4, "#5e5e5e"],
    [3.3, "#fff"],
  ] as const)
    for (const [x, y] of LOBES) {
      ink.beginPath();
      ink.arc(x, y, radius, 0, 2 * Math.PI);
      ink.fillStyle = grey;
      ink.fill();
    }
}

const PAINT: Readonly<Record<Shape, (ink: Ink) => void>> = {
  oxygenated: (ink) => paintRedCell(ink, 1),
  deoxygenated: (ink) => paintRedCell(ink, 0.35),
  protein: paintProtein,
  drop: paintDrop,
  arrow: paintArrow,
};
