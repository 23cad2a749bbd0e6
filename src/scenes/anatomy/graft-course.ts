/** Places along what the surgeon has sewn in. */
import { entryAt } from "../../sim/checked/present.ts";
import { line as lineOf, spotAt } from "../../sim/geometry/centreline.ts";
import type { ChestFrame, Point } from "../../sim/geometry/geometry.ts";

export type Graft = NonNullable<ChestFrame["graft"]>;

/** Part of the graft's length over which its direction is taken. */
const REACH = 0.06;

/** A place beside the graft's middle: `side` 1 is the patient's left; `beyond` mm outside its lumen. */
export const beside = ({ line, widths }: Graft, along: number, side: number, beyond = 0): Point => {
  const whole = lineOf(line);
  const { at } = spotAt(whole, along);
  // Across the course's general way: its single steps would jolt what stands beside it.
  const [near, far] = [spotAt(whole, along - REACH).at, spotAt(whole, along + REACH).at];
  const step = Math.hypot(far[0] - near[0], far[1] - near[1]) || 1;
  const left: Point = [(near[1] - far[1]) / step, (far[0] - near[0]) / step];
  const width = entryAt(widths, Math.round(along * (widths.length - 1)));
  const reach = -side * (width / 2 + Math.sign(Math.abs(side)) * beyond);
  return [at[0] + reach * left[0], at[1] + reach * left[1]];
};
