/** Handles on the geometry: a ring with two arrows along which it moves. The page lays its sliders over them. */
import type { Graphics } from "pixi.js";
import type { Handle } from "../../sim/geometry/geometry.ts";
import type { Theme } from "../theme/theme.ts";

export interface HandleLook {
  /** CSS px: radius of the ring */
  readonly size: number;
  /** the parameter whose handle is pointed at */
  readonly focus: string | null;
}

/** `toScreen` gives CSS px. */
export function drawHandles(
  ink: Graphics,
  handles: readonly Handle[],
  toScreen: (point: readonly [number, number]) => readonly [number, number],
  { size, focus }: HandleLook,
  theme: Theme,
): void {
  ink.clear();
  const { colour } = theme;
  for (const { at, along, edits } of handles) {
    const [x, y] = toScreen(at);
    const dx = along[0];
    const dy = -along[1];
    const lit = focus === edits;
    ink
      .circle(x, y, size)
      .fill({ color: lit ? colour.accent : colour.plate, alpha: lit ? 1 : 0.85 })
      .stroke({ width: Math.max(2, size * 0.18), color: colour.accent });
    for (const way of [1, -1]) {
      const tip = size * 0.68 * way;
      const back = size * 0.22 * way;
      const side = size * 0.34;
      ink
        .poly([
          x + tip * dx,
          y + tip * dy,
          x + back * dx - side * dy,
          y + back * dy + side * dx,
          x + back * dx + side * dy,
          y + back * dy - side * dx,
        ])
        .fill({ color: lit ? colour.onAccent : colour.accent });
    }
  }
}
