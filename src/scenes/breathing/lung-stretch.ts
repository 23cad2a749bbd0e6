/** How far a breath stretches the lungs, read from the traces. */
import type { Traces } from "../../sim/circulation/answer/answer.ts";

/** mmHg across the lungs (alveolar minus pleural) at which they are drawn at their resting size: the mean of a quiet breath. */
const REST = 4.7;
/** Linear widening for each mmHg: half a litre on two and a half is 6 % in each direction over the 2 mmHg of a quiet breath (textbook volumes). */
const WIDENING = 0.032;

/** mmHg across the lungs, as a trace. */
export function stretchTrace(traces: Traces): Float64Array | null {
  const { pleural, alveolar } = traces.pressures;
  return pleural ? pleural.map((value, i) => (alveolar?.[i] ?? 0) - value) : null;
}

/** Linear size of the lungs against rest. */
export const lungSize = (stretch: number): number =>
  Math.min(1.4, Math.max(0.8, 1 + WIDENING * (stretch - REST)));
