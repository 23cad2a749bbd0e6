/** Sizes of type that follow the picture's height, so that a hall reads them as well as a hand. */
export const FAMILY = "Atkinson Hyperlegible";

export interface Sizes {
  /** CSS px: numbers that answer a question, labels of vessels, axes and legends */
  readonly figure: number;
  readonly label: number;
  readonly axis: number;
}

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
