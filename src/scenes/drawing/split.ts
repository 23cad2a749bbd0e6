/** Boxes for panes side by side, and the fit of a plane into a box. */

import { lastOf } from "../../sim/checked/present.ts";
import type { Box } from "../scene.ts";

/** The clear box with air around it, so that words and curves do not touch what stands beside the scene. */
export function withAir(clear: Box): Box {
  const air = Math.max(10, Math.min(clear.width, clear.height) * 0.022);
  return {
    x: clear.x + air,
    y: clear.y + air,
    width: Math.max(1, clear.width - 2 * air),
    height: Math.max(1, clear.height - 2 * air),
  };
}

/** `count` boxes: in a row when the box is wide, one above another when it is tall. */
export function splitBox(box: Box, count: number, gap = 16): readonly Box[] {
  const wide = box.width >= box.height * 0.9;
  const size = ((wide ? box.width : box.height) - gap * (count - 1)) / count;
  return Array.from({ length: count }, (_, i) =>
    wide
      ? { x: box.x + i * (size + gap), y: box.y, width: size, height: box.height }
      : { x: box.x, y: box.y + i * (size + gap), width: box.width, height: size },
  );
}

/** Indices of what stands on each line when things of these widths are set one after another, `gap` apart; none is left out. */
export function rowsOf(
  widths: readonly number[],
  width: number,
  gap: number,
): readonly (readonly number[])[] {
  const rows: number[][] = [];
  let free = -1;
  widths.forEach((each, i) => {
    if (each > free) {
      rows.push([i]);
      free = width - each - gap;
    } else {
      lastOf(rows).push(i);
      free -= each + gap;
    }
  });
  return rows;
}

/** CSS px = plane * scale + (x, y) */
export interface Fit {
  readonly scale: number;
  readonly x: number;
  readonly y: number;
}

/** Where a box of the plane lies on the screen. */
export const placed = ({ x, y, scale }: Fit, box: Box): Box => ({
  x: x + scale * box.x,
  y: y + scale * box.y,
  width: scale * box.width,
  height: scale * box.height,
});

/** The largest centred fit of a plane rectangle that leaves `margin` px free on the left and right. */
export function fitInto(
  box: Box,
  plane: { readonly left: number; readonly top: number; readonly right: number; readonly bottom: number },
  margin = 0,
): Fit {
  const width = plane.right - plane.left;
  const height = plane.bottom - plane.top;
  const scale = Math.max(0.05, Math.min((box.width - 2 * margin) / width, box.height / height));
  return {
    scale,
    x: box.x + box.width / 2 - scale * (plane.left + width / 2),
    y: box.y + box.height / 2 - scale * (plane.top + height / 2),
  };
}
