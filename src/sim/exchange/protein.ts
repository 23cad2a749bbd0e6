/** Plasma protein as a pull and as an amount. */

/** mmHg of a protein concentration in g/dL (Landis & Pappenheimer, Handbook of Physiology 1963; as quoted by Mullins, Am J Clin Pathol 1983;80:170). */
const pullOf = (protein: number): number => 2.1 * protein + 0.16 * protein ** 2 + 0.009 * protein ** 3;

/** Albumin's part of plasma protein by weight (textbook). */
const ALBUMIN_SHARE = 0.6;
/** g/dL: no plasma holds more protein. */
const MAX_PROTEIN = 20;

/** g/dL of albumin that usually goes with an oncotic pressure (mmHg) */
export const albuminOf = (oncoticPressure: number): number => ALBUMIN_SHARE * proteinOf(oncoticPressure);

/** mmHg of pull that is left when the plasma's protein is thinned to a part (0..1) of its strength. */
export const diluted = (oncoticPressure: number, part: number): number =>
  pullOf(proteinOf(oncoticPressure) * part);

/** g/dL of protein that pulls so much (mmHg); by halving, since the pull rises with the amount. */
function proteinOf(oncoticPressure: number): number {
  let [low, high] = [0, MAX_PROTEIN];
  for (let i = 0; i < 50; i++) {
    const middle = (low + high) / 2;
    if (pullOf(middle) < oncoticPressure) low = middle;
    else high = middle;
  }
  return low;
}
