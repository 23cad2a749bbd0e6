/** How much oxygen blood holds. PO2 in mmHg, saturation 0..1, haemoglobin in g/dL, content in mL/dL. */

/** mL of oxygen that a gram of haemoglobin binds, and mL/dL dissolved for each mmHg (textbooks; physiology values, section 5). */
const BINDING = 1.34;
const DISSOLVED = 0.003;
/** mmHg: nothing breathed here passes it. */
const HIGHEST_TENSION = 760;

/** Saturation (0..1) at a tension (mmHg); Severinghaus, J Appl Physiol 1979;46:599: human blood at pH 7.4 and 37 degrees C. */
export const saturationOf = (tension: number): number =>
  tension <= 0 ? 0 : 1 / (23400 / (tension * tension * tension + 150 * tension) + 1);

/** mL/dL of oxygen, bound and dissolved, at a tension (mmHg, 0 to 760) and a haemoglobin (g/dL). */
export const contentOf = (tension: number, haemoglobin: number): number =>
  BINDING * haemoglobin * saturationOf(tension) + DISSOLVED * tension;

/** mL/dL of blood that is saturated this far (0..1) at a haemoglobin (g/dL). */
export const contentAtSaturation = (saturation: number, haemoglobin: number): number =>
  contentOf(tensionAtSaturation(saturation), haemoglobin);

/** mmHg at which blood of this content (mL/dL) stands, 760 at most; by halving, since both parts rise with tension. */
export const tensionOf = (content: number, haemoglobin: number): number =>
  halve((tension) => contentOf(tension, haemoglobin) - content);

/** mmHg at which haemoglobin is saturated this far (0..1), 760 at most: the exact inverse of the curve. */
export const tensionAtSaturation = (saturation: number): number =>
  halve((tension) => saturationOf(tension) - saturation);

function halve(excess: (tension: number) => number): number {
  let low = 0;
  let high = HIGHEST_TENSION;
  for (let i = 0; i < 60; i++) {
    const middle = (low + high) / 2;
    if (excess(middle) < 0) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}
