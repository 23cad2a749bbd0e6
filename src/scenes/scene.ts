/** What every scene is to the stage: a thing that draws a Frame into a box. */
import type { Container, Texture } from "pixi.js";
import type { Frame } from "../chain/frame.ts";
import type { TracerLayer } from "./layers/tracer-layer.ts";
import type { Theme } from "./theme/theme.ts";

/** A rectangle of the canvas in CSS pixels, y down. */
export interface Box {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

/** How a scene is fitted to the stage in this drawing. */
export interface Viewport {
  /** the whole canvas: backgrounds and soft depth may fill it */
  readonly full: Box;
  /** what no control, caption or script covers: all that must be read stays inside */
  readonly clear: Box;
  /** CSS px: smallest type allowed here (24 in a lecture or kiosk) */
  readonly floor: number;
  /** s of wall clock since the last drawing; Infinity asks for every easing to have arrived (stills) */
  readonly elapsed: number;
  /** device pixels in a CSS pixel */
  readonly dense: number;
  /** what draws tracers as one mesh with a shader (WebGL); null where the processor draws, which knows sprites and shapes only */
  readonly meshes: ((capacity: number) => TracerLayer) | null;
  /** where the processor draws and blood moves: paints what is seen from `x`, `y` (CSS px) on into a picture */
  readonly paintInto?: PaintInto | undefined;
  /** the face of words has yet to come: none are written */
  readonly mute?: boolean;
}

export type PaintInto = (view: Container, picture: Texture, x: number, y: number) => void;

/** Where two panes lie one over the other, CSS px: the first is seen to the left of `x`, which moves between two ends. */
export interface Divider {
  readonly x: number;
  readonly from: number;
  readonly to: number;
  readonly top: number;
  readonly bottom: number;
}

export interface Scene {
  /** Put on the stage once; the scene keeps what is inside up to date. */
  readonly view: Container;
  /** Accepts any Frame, also one whose panes hold nothing yet. Never computes what a link of the chain should. */
  draw(frame: Frame, viewport: Viewport, theme: Theme): void;
  /** Where a point of a pane's plane (mm, y up) was last drawn, in CSS px; null when it is not on the screen. */
  toScreen?(point: readonly [number, number], pane: number): readonly [number, number] | null;
  /** The element or place under a point of the canvas (CSS px), for hover and focus. */
  pick?(x: number, y: number): { readonly name: string; readonly pane: number } | null;
  /** null or left out where each pane has a place of its own */
  readonly divider?: Divider | null;
  /** Gives textures and buffers back. */
  release(): void;
}

/** How a view ends: pixi keeps what a Graphics has drawn until it is named here. */
export const WITH_ALL = { children: true, context: true } as const;

export type MakeScene = () => Scene;
