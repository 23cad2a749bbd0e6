/** A layer of tracers that grows with their number, drawn by shaders where the viewport has them. */
import type { Container } from "pixi.js";
import type { Tracers } from "../../sim/tracers/tracers.ts";
import type { Viewport } from "../scene.ts";
import type { TracerLayer } from "./tracer-layer.ts";
import { tracerPicture } from "./tracer-picture.ts";

/** Longest tail, in half widths of a head. */
export const TAIL = 9;

export type Brush = Omit<Parameters<TracerLayer["draw"]>[1], "colours">;

/** mm, half width of a head: 3 px or more at 1080 lines, in proportion elsewhere. */
export const headSize = ({ full }: Viewport, { scale }: Brush["at"]): number =>
  Math.max(1.2, full.height * 0.0016) / scale;

/** A layer for tracers, made again when there are more of them than it can hold. */
export function tracerView(parent: Container) {
  let layer: TracerLayer | null = null;
  let room = 0;
  let colours = new Uint32Array(0);
  return {
    draw(
      moved: Tracers,
      paint: (moved: Tracers, colours: Uint32Array) => void,
      brush: Brush,
      { meshes }: Viewport,
    ): void {
      const capacity = moved.origin.length;
      if (!layer || capacity > room) {
        layer?.release();
        layer = meshes?.(capacity) ?? tracerPicture();
        room = capacity;
        colours = new Uint32Array(capacity);
        parent.addChild(layer.view);
      }
      paint(moved, colours);
      layer.draw(moved, { ...brush, colours });
    },
    hide(): void {
      if (layer) layer.view.visible = false;
    },
    release(): void {
      layer?.release();
    },
  };
}
