/** What lymph vessels carry, and what holds them up. */
import { present } from "../checked/present.ts";
import { findParameter } from "../parameters/parameters.ts";
import { mmHgFromWater } from "../units.ts";

/**
 * Ratio of lymph flow to that at rest (teaching function, physiology values, section 8: 1 at -3 mmHg, 11 at 0, 18 at +2).
 * @param interstitialPressure mmHg
 * @param maximum ratio that it levels off at
 */
export function lymphRatio(interstitialPressure: number, maximum: number): number {
  return maximum / (1 + Math.exp(-(interstitialPressure + 0.2) / 0.95));
}

/** What {@link lymphRatio} levels off at in healthy tissue. */
const HEALTHY = Number(present(findParameter("lymphMaximum")).default);

/**
 * Sheep's lymph vessels (liver, awake) as a pressure (cmH2O) behind a resistance (cmH2O.min/uL): at rest, and as they are when congestion
 * has their flow sixfold. At rest nothing changes until the pressure that they empty against passes `held`. Drake & Gabel 1990,
 * PMID 2221144, abstract.
 */
const REST = { driving: 29.6, held: 19, resistance: 0.18 };
const CONGESTED = { driving: 37.1, resistance: 0.05 };

/**
 * Ratio to lymph flow at rest that vessels carry at most: it falls straight, to none where the pressure that they empty against is all that
 * drives them (27 mmHg). 11 at a healthy vein's 4 mmHg, and 6.5 at 13.
 * @param outflowPressure mmHg
 * @param maximum ratio that their flow levels off at in the tissue, which their strength is taken to follow
 */
export function againstOutflow(outflowPressure: number, maximum: number): number {
  const atRest = (REST.driving - REST.held) / REST.resistance;
  const left = Math.max(0, mmHgFromWater(CONGESTED.driving) - Math.max(0, outflowPressure));
  return ((maximum / HEALTHY) * left) / mmHgFromWater(CONGESTED.resistance * atRest);
}
