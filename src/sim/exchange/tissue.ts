/** How tissue pressure follows tissue fluid (teaching function, physiology values, section 8; shape after Guyton 1965). */

/** mL/mmHg/kg: stiff while the pressure is below atmosphere, giving way above it. */
const STIFF = 400 / 70;
const SLACK = 10_000 / 70;
/** mmHg: half width of the corner between the two. */
const CORNER = 0.5;

/** mmHg, at rest (Guyton) */
export const TISSUE_PRESSURE_USUAL = -3;

/** mL/mmHg of a tissue of this weight (kg), at its pressure (mmHg) */
export function tissueCompliance(pressure: number, weight: number): number {
  const slack = Math.min(1, Math.max(0, (pressure + CORNER) / (2 * CORNER)));
  return weight * (STIFF + (SLACK - STIFF) * slack);
}
