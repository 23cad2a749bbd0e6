/** Marks that move over the tissue: each kind is painted once, in white and greys, and takes the colour that it is given. */
import { Container, Sprite, Texture } from "pixi.js";
import { entryAt } from "../../sim/checked/present.ts";
import { closedOutline } from "../../sim/geometry/centreline.ts";
import { type Ink, inkFor, trace } from "../anatomy/painted-sheet.ts";
import { type Spot, spots } from "../drawing/curve-drawing.ts";

/** Device pixels of a plane unit. */
const DENSE = 1.6;
/** Half a mark's picture, plane units. */
const ROOM = 64;

/** Red cells: bent to a bullet or to a slipper. */
export const RED_CELLS = ["bullet", "slipper"] as const;
type RedCell = (typeof RED_CELLS)[number];
type Shape = `${"oxygenated" | "deoxygenated"} ${RedCell}` | "protein" | "drop" | "arrow";

export interface Mark {
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

/** Outlines in a narrow vessel: round in front and hollow behind, or drawn out along one wall. */
const OUTLINES: Readonly<Record<RedCell, readonly Spot[]>> = {
  bullet: spots(
    "-42 -27, -12 -32, 20 -26, 38 -8, 38 8, 20 26, -12 32, -42 27, -36 17, -23 10, -20 0, -23 -10, -36 -17",
  ),
  slipper: spots("-46 -18, -20 -29, 14 -25, 38 -10, 44 8, 24 22, 2 22, -14 15, -26 8, -42 1, -50 -8"),
};

function paintRedCell(ink: Ink, kind: RedCell, pale: number): void {
  trace(ink, closedOutline(OUTLINES[kind]), true);
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
  trace(ink, closedOutline(OUTLINES[kind]), true);
  ink.lineWidth = 2.4;
  ink.strokeStyle = "#8a8a8a";
  ink.stroke();
}

/** Half a drop, plane units. */
const DROP = 6.6;

/** Water: clear in its middle, with a light. */
function paintDrop(ink: Ink): void {
  const round = ink.createRadialGradient(-1.5, -2, 0.5, 0, 0, DROP);
  round.addColorStop(0, "rgba(255,255,255,0.55)");
  round.addColorStop(0.55, "rgba(255,255,255,0.75)");
  round.addColorStop(1, "#fff");
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

/** Albumin: an egg-shaped molecule, half its length and breadth in plane units. */
const ALBUMIN = [12.5, 8] as const;

function paintProtein(ink: Ink): void {
  ink.beginPath();
  ink.ellipse(0, 0, ...ALBUMIN, 0, 0, 2 * Math.PI);
  const round = ink.createRadialGradient(-4, -3, 1, 0, 0, ALBUMIN[0]);
  round.addColorStop(0, "#fff");
  round.addColorStop(0.5, "#e6e6e6");
  round.addColorStop(1, "#a8a8a8");
  ink.fillStyle = round;
  ink.fill();
  ink.lineWidth = 2;
  ink.strokeStyle = "#5e5e5e";
  ink.stroke();
}

const PAINT: Readonly<Record<Shape, (ink: Ink) => void>> = {
  ...(Object.fromEntries(
    RED_CELLS.flatMap((kind) => [
      [`oxygenated ${kind}`, (ink: Ink) => paintRedCell(ink, kind, 1)],
      [`deoxygenated ${kind}`, (ink: Ink) => paintRedCell(ink, kind, 0.35)],
    ]),
  ) as Readonly<Record<Exclude<Shape, "protein" | "drop" | "arrow">, (ink: Ink) => void>>),
  protein: paintProtein,
  drop: paintDrop,
  arrow: paintArrow,
};
