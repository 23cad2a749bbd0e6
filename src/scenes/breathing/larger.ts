/** How many times larger than it is the breath's movement is drawn: that of a quiet breath is little to see. */
import type { Traces } from "../../sim/circulation/answer/answer.ts";
import { DEEP } from "../anatomy/standing.ts";
import { lungSize, stretchTrace } from "./lung-stretch.ts";

const LARGER = 2;

/** Linear size of the lungs against rest, with their movement drawn so many times larger. */
export const drawnLarger = (size: number, times: number): number => 1 + times * (size - 1);

/** Once where more would go beyond the model's deep breath. */
export function largerOf(traces: Traces): number {
  const stretch = stretchTrace(traces);
  return stretch && drawnLarger(lungSize(Math.max(...stretch)), LARGER) <= 1 + DEEP ? LARGER : 1;
}
