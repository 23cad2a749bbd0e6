/** Sizes of type that follow the picture's height, so that a hall reads them as well as a hand. */
export const FAMILY = "Atkinson Hyperlegible";

export interface Sizes {
  /** CSS px: numbers that answer a question, labels of vessels, axes and legends */
  readonly figure: number;
  readonly label: number;
  readonly axis: number;
}

/** Width over height from which on a box's height says how large its type is. */
const TALL = 0.8;

/** Sizes for a picture in a box, which may be tall and narrow. */
export const sizesIn = (
  { width, height }: { readonly width: number; readonly height: number },
  floor: number,
): Sizes => sizes(Math.min(height, width / TALL), floor);

/**
 * @param height CSS px of the picture
 * @param floor  CSS px under which nothing may fall (24 in a lecture or kiosk, 13 in the hand)
 */
export function sizes(height: number, floor: number): Sizes {
  return {
    figure: Math.round(Math.max(floor * 1.35, height * 0.034)),
    label: Math.round(Math.max(floor, height * 0.0215)),
    axis: Math.round(Math.max(floor, height * 0.0185)),
  };
}
