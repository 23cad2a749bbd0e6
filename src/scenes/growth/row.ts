/** How the row of growing bodies shares its box. */
import type { Box } from "../scene.ts";

/** Linear size of a body against another: the root of the surfaces' ratio. */
export const bodyScale = (bsa: number, against: number): number => Math.sqrt(bsa / against);

/** A figure's width, arms included, in parts of its height. */
export const FIGURE = 0.34;

/** Every second body is left out where there is no room for the words beneath them. */
export const shownOf = <T>(points: readonly T[], width: number, type: number): readonly T[] =>
  width / points.length < type * 4.4 ? points.filter((_, i) => i % 2 === 1 || i === 0) : points;

/** CSS px that the row needs at most: two fifths of the box, less when its width already limits the figures. */
export function rowHeight(box: Box, count: number, type: number): number {
  const step = box.width / shownOf(Array.from({ length: count }), box.width, type).length;
  const figure = (step * 0.92) / FIGURE;
  return Math.min(box.height * 0.4, figure + step * 0.86 + type * 2.6);
}
