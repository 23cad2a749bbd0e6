/** How a half of the rib cage swings: about the spine, its side up and out as the lungs widen. */
import { inChest } from "../circuit/chest-plan.ts";
import { MIDLINE } from "./torso.ts";

/** Part of the lungs' widening by which the wall follows: as far out as the lung's side comes. */
const FOLLOWS = 0.45;
/** mm up for each mm away from the spine, for a widening of one. */
const RISE = 0.3;

const [MIDDLE] = inChest([MIDLINE, 0]);

/** Part of the ribs' way that the skin goes, and the arms with it. */
const SKIN = 0.45;

/** How much wider the rib cage stands for a size of the lungs against rest, and the skin over it. */
const widthOf = (size: number): number => 1 + FOLLOWS * (size - 1);
export const skinWidth = (size: number): number => 1 + SKIN * FOLLOWS * (size - 1);

/** In the order of a matrix: x' = a x + tx, y' = b x + y + ty (mm). @param sign 1 on the patient's left, -1 on the right */
export function swingOf(sign: number, size: number) {
  const wide = widthOf(size);
  const rise = sign * RISE * (size - 1);
  return { a: wide, b: rise, tx: MIDDLE * (1 - wide), ty: -rise * MIDDLE };
}
