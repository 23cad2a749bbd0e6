/** Who uses the oxygen, and how much of it each can draw out. */

export const ORGANS = ["upper", "kidneys", "gut", "legs", "coronary"] as const;
export type Organ = (typeof ORGANS)[number];
export type ByOrgan = Readonly<Record<Organ, number>>;

/** Shares at rest: kidneys 7 %, liver and gut a quarter, the heart 7 % of what is used (textbooks), the upper body as in physiology values, section 2. */
const SHARES = { upper: 0.44, kidneys: 0.07, gut: 0.25, coronary: 0.07 };
/** What the heart's use rises by for each MET: four- to fivefold at 10 (textbook). */
const CORONARY_RISE = 0.45;

/**
 * Saturation (0..1) below which a vein does not fall, however much its organs ask for: working legs leave some 15 %, so that mixed
 * venous blood keeps some 20 (Claessen 2019 and textbooks: 20-30 at the greatest effort); the others were never seen so low.
 */
export const MIN_SATURATION: ByOrgan = { upper: 0.25, kidneys: 0.25, gut: 0.2, legs: 0.15, coronary: 0.2 };

/**
 * The heart's vessels widen until their vein stands here: it has no more to draw out (29 % at rest and in exercise in persons without
 * coronary disease: Messer, J Clin Invest 1962;41:725, abstract; textbooks: 30-35 %).
 */
export const CORONARY_SATURATION = 0.33;

/**
 * mL/min by organ; what exertion adds is used by legs (and, in its share, the heart).
 * @param rest mL/min @param equivalents METs
 */
export function organUse(rest: number, equivalents: number): ByOrgan {
  const upper = SHARES.upper * rest;
  const kidneys = SHARES.kidneys * rest;
  const gut = SHARES.gut * rest;
  const coronary = SHARES.coronary * rest * (1 + CORONARY_RISE * (equivalents - 1));
  return { upper, kidneys, gut, coronary, legs: rest * equivalents - upper - kidneys - gut - coronary };
}
