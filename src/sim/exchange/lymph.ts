/** What lymph vessels carry, and what holds them up. */

/**
 * Ratio of lymph flow to that at rest (teaching function, physiology values, section 8: 1 at -3 mmHg, 11 at 0, 18 at +2).
 * @param interstitialPressure mmHg
 * @param maximum ratio that it levels off at
 */
export function lymphRatio(interstitialPressure: number, maximum: number): number {
  return maximum / (1 + Math.exp(-(interstitialPressure + 0.2) / 0.95));
}

/** mmHg in the vein that the thoracic duct empties into: usual in health, and where its pump stalls (ducts were measured to 29 mmHg at a pathway of 12-20, Circulation 2017, abstract 19357). */
export const USUAL_OUTFLOW = 4;
const STALLING_OUTFLOW = 60;
const MIN_PUMPED = 0.1;

/**
 * Ratio (0.1 to 1) of the greatest lymph flow to that with a usual pressure where the duct empties: it falls straight to where the pump
 * stalls (teaching function).
 * @param outflowPressure mmHg
 */
export const againstOutflow = (outflowPressure: number): number =>
  Math.min(
    1,
    Math.max(MIN_PUMPED, 1 - (outflowPressure - USUAL_OUTFLOW) / (STALLING_OUTFLOW - USUAL_OUTFLOW)),
  );
