/** What a field of this pathway was found to lose, from the table: known at once, while the live field still settles. */
import type { Circulation } from "../sim/circulation/answer.ts";
import { fieldRatio } from "../sim/hydraulics/field-ratio.ts";
import { fromLitresPerMinute } from "../sim/units.ts";

export interface TabulatedLoss {
  /** mmHg */
  readonly pressureDrop: number;
  /** mW */
  readonly powerLoss: number;
}

/** null where the table knows nothing like it. */
export function tabulatedLoss(circulation: Circulation | null): TabulatedLoss | null {
  if (!circulation) return null;
  const { request, pathway, flows } = circulation;
  const ratio = fieldRatio(request, fromLitresPerMinute(flows.left + flows.right));
  return ratio
    ? { pressureDrop: ratio.drop * pathway.pressureDrop, powerLoss: ratio.power * pathway.powerLoss }
    : null;
}
