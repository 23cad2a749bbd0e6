/** What still shapes are drawn with: the library's shapes, or a canvas, where a picture painted once costs a frame no more than one sprite. */
import type { Ink } from "../anatomy/painted-sheet.ts";

interface Fill {
  readonly color: string;
  readonly alpha?: number;
}

interface Stroke extends Fill {
  readonly width: number;
  readonly cap?: "butt" | "round";
  readonly join?: "miter" | "round";
}

/** A path ends where it is filled or stroked last: the next point begins another. */
export interface Brush {
  moveTo(x: number, y: number): Brush;
  lineTo(x: number, y: number): Brush;
  quadraticCurveTo(cx: number, cy: number, x: number, y: number): Brush;
  closePath(): Brush;
  poly(points: number[], close?: boolean): Brush;
  fill(style: Fill): Brush;
  stroke(style: Stroke): Brush;
}

/** On a canvas whose y counts up, in a plane that counts down. */
export function brushOn(ink: Ink): Brush {
  let ended = true;
  const path = (add: () => void): Brush => {
    if (ended) ink.beginPath();
    ended = false;
    add();
    return brush;
  };
  const end = (alpha: number, draw: () => void): Brush => {
    ended = true;
    ink.globalAlpha = alpha;
    draw();
    ink.globalAlpha = 1;
    return brush;
  };
  const brush: Brush = {
    moveTo: (x, y) => path(() => ink.moveTo(x, -y)),
    lineTo: (x, y) => path(() => ink.lineTo(x, -y)),
    quadraticCurveTo: (cx, cy, x, y) => path(() => ink.quadraticCurveTo(cx, -cy, x, -y)),
    closePath: () => path(() => ink.closePath()),
    poly: (points, close = true) =>
      path(() => {
        for (let i = 0; i + 1 < points.length; i += 2)
          ink[i === 0 ? "moveTo" : "lineTo"](points[i] ?? 0, -(points[i + 1] ?? 0));
        if (close) ink.closePath();
      }),
    fill: ({ color, alpha = 1 }) =>
      end(alpha, () => {
        ink.fillStyle = color;
        ink.fill();
      }),
    stroke: ({ color, width, alpha = 1, cap = "butt", join = "miter" }) =>
      end(alpha, () => {
        ink.strokeStyle = color;
        ink.lineWidth = width;
        ink.lineCap = cap;
        ink.lineJoin = join;
        ink.stroke();
      }),
  };
  return brush;
}
