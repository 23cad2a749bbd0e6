/** The moment that a picture of the calf shows which never moved. */
import { entryAt } from "../sim/checked/present.ts";
import type { Traces } from "../sim/circulation/answer/answer.ts";

/** s of the cycle: the squeeze at the moment at which it drives most blood out; of a calf at rest, the beginning. */
export function squeezeMoment({ time, flows, pressures }: Traces): number {
  const { calf } = pressures;
  const { legs } = flows;
  if (!calf || !legs) return 0;
  const rises = (i: number) => i > 0 && i + 1 < time.length && entryAt(calf, i + 1) > entryAt(calf, i - 1);
  let best = 0;
  time.forEach((_, i) => {
    if (rises(i) && (best === 0 || entryAt(legs, i) > entryAt(legs, best))) best = i;
  });
  return entryAt(time, best);
}
