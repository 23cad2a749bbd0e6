/** A still part of the plane, painted into a picture whenever it changes: a frame costs one sprite, however many vessels it shows. */
import { Container } from "pixi.js";
import { type Bounds, type Ink, type Painted, sheet } from "../anatomy/painted-sheet.ts";
import { type Brush, brushOn } from "../drawing/brush.ts";
import type { Fit } from "../drawing/split.ts";
import type { Extent } from "./proportions.ts";

/** Plane units beyond an extent that its box may show. */
const AIR = 24;

/** How a sheet lies on the canvas: what of the plane it shows (y up, as sheets are painted), and device pixels of a plane unit. */
export interface Laying {
  readonly room: Bounds;
  readonly density: number;
}

/** On whole device pixels, one to one: the processor then copies what it else would have to resample in each frame. */
export function layingOf({ left, top, right, bottom }: Extent, fit: Fit, dense: number): Laying {
  const density = fit.scale * dense;
  const whole = (at: number, from: number, up: 1 | -1) =>
    (up * Math.ceil(up * (at * density + from * dense)) - from * dense) / density;
  return {
    density,
    room: [
      whole(left - AIR, fit.x, -1),
      -whole(bottom + AIR, fit.y, 1),
      whole(right + AIR, fit.x, 1),
      -whole(top - AIR, fit.y, -1),
    ],
  };
}

/** The plane counts down. */
export const turned = ({ view }: Painted): Container => {
  const plane = new Container();
  plane.scale.set(1, -1);
  plane.addChild(view);
  return plane;
};

export interface DrawnLayer {
  readonly view: Container;
  /** @param over paints on it with y up */
  draw(laying: Laying, paint: (ink: Brush) => void, over?: (ink: Ink) => void): void;
  release(): void;
}

export function drawnLayer(): DrawnLayer {
  const painted = sheet();
  return {
    view: turned(painted),
    draw: ({ room, density }, paint, over) =>
      painted.paint(room, density, [0, 0], (ink) => {
        paint(brushOn(ink));
        over?.(ink);
      }),
    release: painted.release,
  };
}
