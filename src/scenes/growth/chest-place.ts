/** How much of a chest is seen, and where the blood of a pathway rises in it. */
import type { ChestFrame, Point } from "../../sim/geometry/geometry.ts";

/** mm: half of what is seen of the chest of a body with a surface of 1.73 m2; its heart is then some 110 mm wide (adults: 110 to 140, from memory). */
const REACH = 96;
const GROWN = 1.73;
/** mm. @param bsa m2 */
export const chestReach = (bsa: number): number => REACH * Math.sqrt(bsa / GROWN);

/** CSS px: the middle of the round picture, its radius, and px for each mm. */
export interface ChestPlace {
  readonly x: number;
  readonly y: number;
  readonly radius: number;
  readonly perMillimetre: number;
}

/** mm of a 5-year-old: the picture's middle towards the patient's left of the heart's beginning, and above the atrium's middle. */
const [LEFT, ABOVE] = [6, 9];

/** mm: the middle of what is seen. */
export const middleOf = ({ heart, level, scale }: ChestFrame): Point => [
  heart + LEFT * scale,
  level + ABOVE * scale,
];

/** mm: the way of the blood through tube, tunnel or chamber, upwards, and its width at each point. @throws where nothing leads it */
export function trunkOf({ graft, chamber }: ChestFrame): {
  readonly line: readonly Point[];
  readonly widths: readonly number[];
} {
  if (graft) return graft;
  if (!chamber) throw new Error("a frame without a pathway");
  const [across, up] = chamber;
  const parts = [-0.8, -0.4, 0, 0.4, 0.8];
  return {
    line: parts.map((part): Point => [0, part * up]),
    widths: parts.map((part) => 2 * across * Math.sqrt(1 - part * part)),
  };
}
