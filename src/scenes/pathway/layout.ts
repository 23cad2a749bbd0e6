/** Where plane, grade line and key go, at any size: pure arithmetic. */
import { splitBox } from "../drawing/split.ts";
import type { Box } from "../scene.ts";
import type { Sizes } from "../theme/type.ts";

export interface Layout {
  readonly planes: readonly Box[];
  /** null when the view does not ask for it */
  readonly grade: Box | null;
  /** the key's corner and the width it may take */
  readonly key: { readonly x: number; readonly y: number; readonly width: number };
  readonly narrow: boolean;
}

export function layout(clear: Box, panes: number, gradeLine: boolean, sizes: Sizes): Layout {
  const pad = Math.round(sizes.axis * 0.8);
  const narrow = clear.width < 36 * sizes.axis;
  const height = gradeLine ? Math.max(sizes.axis * 8.5, Math.min(clear.height * 0.26, sizes.axis * 13)) : 0;
  const grade = gradeLine
    ? {
        x: clear.x + pad,
        y: clear.y + clear.height - height,
        width: clear.width - 2 * pad,
        height: height - pad / 2,
      }
    : null;
  const above = { x: clear.x, y: clear.y, width: clear.width, height: clear.height - height };
  return {
    planes: splitBox(above, panes, pad),
    grade,
    key: { x: clear.x + pad, y: clear.y + pad, width: narrow ? clear.width * 0.46 : sizes.axis * 14 },
    narrow,
  };
}

/** mm -> CSS px, y turned over. */
export interface Projection {
  readonly scale: number;
  readonly x: number;
  readonly y: number;
}

/** Fits [left, bottom, right, top] mm into a box, centred. */
export function project(
  box: Box,
  [left, bottom, right, top]: readonly [number, number, number, number],
): Projection {
  const scale = Math.min(box.width / (right - left), box.height / (top - bottom));
  return {
    scale,
    x: box.x + box.width / 2 - (scale * (left + right)) / 2,
    y: box.y + box.height / 2 + (scale * (bottom + top)) / 2,
  };
}

export const onScreen = (
  { scale, x, y }: Projection,
  [px, py]: readonly [number, number],
): readonly [number, number] => [x + scale * px, y - scale * py];

export const onPlane = ({ scale, x, y }: Projection, sx: number, sy: number): readonly [number, number] => [
  (sx - x) / scale,
  (y - sy) / scale,
];
