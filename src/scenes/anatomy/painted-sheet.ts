/** A part painted once into a picture of its own, so that a frame costs one sprite; painted again when it changes or the camera comes closer. */
import { Container, DOMAdapter, Rectangle, Sprite, Texture } from "pixi.js";
import { present } from "../../sim/checked/present.ts";
import type { Point } from "../../sim/geometry/geometry.ts";

export type Ink = CanvasRenderingContext2D;

/** mm: left, bottom, right, top */
export type Bounds = readonly [number, number, number, number];

export interface Outlines {
  /** closed lines (mm, x and y in turn) around the pathway's vessels, and around its blood */
  readonly seen: readonly (readonly number[])[];
  readonly lumen?: readonly (readonly number[])[];
}

export interface Painted {
  /** moves and scales about the pivot that it was painted with */
  readonly view: Container;
  /** @param density device pixels a millimetre; `paint` draws in mm, y up */
  paint(bounds: Bounds, density: number, pivot: Point, paint: (ink: Ink) => void): void;
  /** The same, seen once the function that is returned is called. @param hinge mm: from which height on it can lengthen downwards */
  prepare(...what: [...Parameters<Painted["paint"]>, hinge?: number | undefined]): () => void;
  /** Lengthens by this part what lies below its hinge. */
  lengthen(part: number): void;
  release(): void;
}

/** Factor in size within which a picture serves. */
const CLOSE_ENOUGH = 1.25;

/** Whether what was painted at one density looks right at another. */
export const servesAt = (painted: number, wanted: number): boolean =>
  wanted / painted <= CLOSE_ENOUGH && painted / wanted <= CLOSE_ENOUGH;

/** Longest side of a picture */
const MAX_TEXELS = 3072;

/** Part of a row by which the lower half lies over the upper one: no seam shows between them. */
const OVERLAP = 0.35;

export function sheet(): Painted {
  const view = new Container();
  const [upper, lower] = [new Sprite(), new Sprite()];
  view.addChild(upper, lower);
  let whole: Texture | null = null;
  let above: Texture | null = null;
  let texel = 1;
  const prepare: Painted["prepare"] = (bounds, density, pivot, paint, hinge) => {
    const [, bottom, right] = bounds;
    const scale = Math.min(density, MAX_TEXELS / Math.max(right - bounds[0], bounds[3] - bottom));
    // Whole pixels from the plane's origin: where that lies on one too they are laid pixel on pixel, in a fifth of the time.
    const left = Math.floor(bounds[0] * scale) / scale;
    const top = Math.ceil(bounds[3] * scale) / scale;
    const ink = inkFor([left, bottom, right, top], scale);
    paint(ink);
    return () => {
      whole?.destroy(true);
      whole = Texture.from(ink.canvas, true);
      const { source, width, height } = whole;
      upper.texture = whole;
      texel = 1 / scale;
      lower.visible = false;
      above = null;
      const row = hinge === undefined ? 0 : Math.round((top - hinge) * scale);
      if (row > 0 && row < height) {
        const part = (from: number, to: number) =>
          new Texture({ source, frame: new Rectangle(0, from, width, to - from) });
        above = part(0, row);
        lower.texture = part(row, height);
        lower.position.set(left, top - (row - OVERLAP) * texel);
      }
      upper.position.set(left, top);
      upper.scale.set(texel, -texel);
      view.pivot.set(...pivot);
      view.position.set(...pivot);
    };
  };
  return {
    view,
    prepare,
    paint(...what) {
      prepare(...what)();
    },
    lengthen(part) {
      lower.visible = above !== null && part !== 0;
      upper.texture = (lower.visible ? above : whole) ?? upper.texture;
      lower.scale.set(texel, -texel * (1 + part));
    },
    release() {
      whole?.destroy(true);
    },
  };
}

/** A canvas for the room within `bounds`, drawn in mm, y up. @param scale pixels a millimetre */
export function inkFor([left, bottom, right, top]: Bounds, scale: number): Ink {
  const canvas = DOMAdapter.get().createCanvas(
    Math.ceil((right - left) * scale),
    Math.ceil((top - bottom) * scale),
  ) as HTMLCanvasElement;
  const ink = present(canvas.getContext("2d"));
  ink.setTransform(scale, 0, 0, -scale, -left * scale, top * scale);
  ink.lineJoin = "round";
  ink.lineCap = "round";
  return ink;
}

/** The room that outlines take, with air around them, mm. */
export function boundsOf(outlines: readonly (readonly Point[])[], air: number): Bounds {
  const xs = outlines.flatMap((outline) => outline.map(([x]) => x));
  const ys = outlines.flatMap((outline) => outline.map(([, y]) => y));
  return [Math.min(...xs) - air, Math.min(...ys) - air, Math.max(...xs) + air, Math.max(...ys) + air];
}

/** Lays a line as the path that `ink` fills or strokes next. */
export function trace(ink: Ink, points: readonly Point[], closed = false): void {
  ink.beginPath();
  points.forEach(([x, y], i) => {
    if (i === 0) ink.moveTo(x, y);
    else ink.lineTo(x, y);
  });
  if (closed) ink.closePath();
}

/** The same with closed lines, x and y in turn. */
export function traceLoops(ink: Ink, loops: Outlines["seen"]): void {
  ink.beginPath();
  for (const loop of loops) {
    for (let i = 0; i < loop.length; i += 2)
      ink[i === 0 ? "moveTo" : "lineTo"](loop[i] ?? 0, loop[i + 1] ?? 0);
    ink.closePath();
  }
}

/** Strokes one over the other: widths as parts of `size`, and their colours. */
export function strokes(
  ink: Ink,
  points: readonly Point[],
  size: number,
  lines: readonly (readonly [width: number, colour: string])[],
): void {
  trace(ink, points);
  for (const [width, colour] of lines) {
    ink.lineWidth = width * size;
    ink.strokeStyle = colour;
    ink.stroke();
  }
}

interface Dashes {
  /** of `size`: how wide they are, how long they and their gaps */
  readonly wide?: number;
  readonly lengths?: readonly [dash: number, gap: number];
  readonly alpha?: number;
}

/** Strokes the path that is laid as an edge that something lies before. @param size mm of the body for one of a 5-year-old */
export function dash(
  ink: Ink,
  size: number,
  colour: string,
  { wide = 0.5, lengths = [2.4, 1.7], alpha = 0.7 }: Dashes = {},
): void {
  ink.save();
  ink.setLineDash(lengths.map((length) => length * size));
  ink.lineCap = "butt";
  ink.lineWidth = wide * size;
  ink.globalAlpha = alpha;
  ink.strokeStyle = colour;
  ink.stroke();
  ink.restore();
}

/** Takes away what has been painted, nothing of it at `whole`, all at `gone`: within `room`, or within the path that is laid. */
export function eraseAlong(ink: Ink, whole: Point, gone: Point, room?: Bounds): void {
  const fall = ink.createLinearGradient(...whole, ...gone);
  fall.addColorStop(0, "#0000");
  fall.addColorStop(1, "#000");
  ink.save();
  ink.globalAlpha = 1;
  ink.globalCompositeOperation = "destination-out";
  ink.fillStyle = fall;
  if (room) ink.fillRect(room[0], room[1], room[2] - room[0], room[3] - room[1]);
  else ink.fill();
  ink.restore();
}
