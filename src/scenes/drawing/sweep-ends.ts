/** The ends of a sweep's first curve, for what is said of it. */
import type { Sweep, SweepPoint } from "../../chain/running-sweep.ts";
import type { Circulation } from "../../sim/circulation/answer/answer.ts";

type Answered = SweepPoint & { readonly circulation: Circulation };

const isAnswered = (point: SweepPoint | undefined): point is Answered => !!point?.circulation;

/** null until both ends are answered; a curve that ends `early`, its last points refused, until the whole sweep is. */
export function sweepEnds({ curves, progress }: Sweep): {
  readonly first: Answered;
  readonly last: Answered;
  readonly early: boolean;
} | null {
  const points = curves[0]?.points ?? [];
  const [first, end] = [points[0], points.at(-1)];
  const last = progress === 1 ? points.findLast(isAnswered) : end;
  return isAnswered(first) && isAnswered(last) ? { first, last, early: last !== end } : null;
}
