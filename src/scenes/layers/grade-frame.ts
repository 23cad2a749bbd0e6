/** Where the plot of the grade line lies in its box. */
import type { Box } from "../scene.ts";
import type { Sizes } from "../theme/type.ts";

export interface Plot {
  readonly left: number;
  readonly top: number;
  readonly width: number;
  readonly height: number;
}

/** Room that a key takes from the plot, CSS px. */
export interface Key {
  readonly width: number;
  readonly height: number;
}

/** Room for the axis numbers on the left, the names beneath and the key. */
export function frame(box: Box, key: Key | null, sizes: Sizes): Plot {
  const left = box.x + sizes.axis * 3.4;
  const top = box.y + sizes.axis * 1.5 + (key?.height ?? 0);
  return {
    left,
    top,
    width: box.x + box.width - sizes.axis - left - (key?.width ?? 0),
    height: box.y + box.height - sizes.axis * 2.9 - top,
  };
}

/** Heights of type below which lines can't be distinguished. */
const MIN = 3;

export const readable = (plot: Plot, sizes: Sizes): boolean => plot.height >= MIN * sizes.axis;

/** Widths of type from which a plot has room for words beside its figures. */
const WIDE = 32;

export const roomy = (plot: Plot, sizes: Sizes): boolean => plot.width >= WIDE * sizes.label;
