/** Where a map's cells lie on its colours, and the ink that can be read on them. */
import type { Rgb } from "../../scenes/theme/colour.ts";
import { present } from "../../sim/checked/present.ts";

const luminance = (colour: Rgb): number => {
  const [r, g, b] = colour.map((value) =>
    value <= 0.04045 ? value / 12.92 : ((value + 0.055) / 1.055) ** 2.4,
  );
  return 0.2126 * present(r) + 0.7152 * present(g) + 0.0722 * present(b);
};

/** Ink that keeps the greater contrast on a colour (WCAG 2.2, relative luminance). */
export const inkOn = (colour: Rgb): "#000000" | "#ffffff" =>
  (luminance(colour) + 0.05) / 0.05 > 1.05 / (luminance(colour) + 0.05) ? "#000000" : "#ffffff";

/** 0..1 of each value between the least and the greatest; null stays null, equal values lie in the middle. */
export function placesOf(
  cells: readonly (readonly (number | null)[])[],
): readonly (readonly (number | null)[])[] {
  const known = cells.flat().filter((value): value is number => value !== null);
  const [least, greatest] = [Math.min(...known), Math.max(...known)];
  return cells.map((row) =>
    row.map((value) =>
      value === null ? null : greatest > least ? (value - least) / (greatest - least) : 0.5,
    ),
  );
}
