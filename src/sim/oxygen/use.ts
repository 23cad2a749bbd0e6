/** Who uses the oxygen. */

/** Shares at rest (upper body as in physiology values, section 2, the heart from its 3 % of flow at a usual coronary sinus near 35 %). */
const UPPER = 0.44;
const CORONARY = 0.07;

/**
 * mL/min by region; what exertion adds is used by legs (and, in its share, the heart).
 * @param rest mL/min @param equivalents METs
 */
export function regionalUse(rest: number, equivalents: number) {
  const coronary = CORONARY * rest * equivalents;
  const upper = UPPER * rest;
  return { upper, coronary, lower: rest * equivalents - coronary - upper };
}
