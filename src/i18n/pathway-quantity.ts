/** The pathway's numbers as every picture, table and voice writes them: drop, loss and shares with the same decimals everywhere, each with its band. */
import { type Band, formatQuantity, type Quantity } from "./quantity.ts";

/** Decimals in mmHg and mW. */
export const LOSS_DIGITS = { pressureDrop: 2, powerLoss: 1 } as const;

interface PathwayLoss {
  /** mmHg */
  readonly pressureDrop: number;
  /** mW */
  readonly powerLoss: number;
  readonly band: { readonly pressureDrop: Band; readonly powerLoss: Band } | null;
}

/** `write`: as symbols (the default) or as words for a voice. */
export const writeDrop = ({ pressureDrop, band }: PathwayLoss, write: Quantity = formatQuantity): string =>
  write(pressureDrop, "mmHg", LOSS_DIGITS.pressureDrop, band?.pressureDrop);

export const writeLoss = ({ powerLoss, band }: PathwayLoss, write: Quantity = formatQuantity): string =>
  write(powerLoss, "mW", LOSS_DIGITS.powerLoss, band?.powerLoss);

export type Lung = "left" | "right";

interface VeinShares {
  /** parts of the vein's blood, 0..1 */
  readonly left: number;
  readonly right: number;
  /** of `left` */
  readonly band: Band;
}

/** Percent of a vein's blood that goes to one lung. What the left lung's band leaves is the right one's. */
export function shareOf(
  { left, right, band: [low, high] }: VeinShares,
  lung: Lung,
): { readonly value: number; readonly band: Band } {
  const both = left + right;
  return lung === "left"
    ? { value: 100 * left, band: [100 * low, 100 * high] }
    : { value: 100 * right, band: [100 * (both - high), 100 * (both - low)] };
}

export function writeShare(shares: VeinShares, lung: Lung, write: Quantity = formatQuantity): string {
  const { value, band } = shareOf(shares, lung);
  return write(value, "%", 0, band);
}
