/**
 * The liver's sinusoids hold no protein back, so that what filters follows their pressure alone, and nothing but lymph and the tissue's
 * own pressure stands against it: Laine, Circ Res 1979;45:317 (dogs, abstract).
 */

/** Parts of a rise of the hepatic veins' pressure that reach the sinusoids and, once it has settled, the tissue. */
const REACHING = { sinusoids: 0.9, tissue: 0.64 };
/** Part of its resting flow that the liver's lymph gains for each mmHg in the tissue. */
const LYMPH_RISE = 0.63;
/** What filters for each mmHg across the wall, in resting lymph flows: so that tissue and lymph settle as measured. */
const FILTERED = (LYMPH_RISE * REACHING.tissue) / (REACHING.sinusoids - REACHING.tissue);
/** mmHg by which the tissue's pressure has risen when its capsule weeps (teaching value: the veins then stand near 15). */
const WEEPS_FROM = 7;

/** Ratio of what filters to resting lymph, at rises (mmHg) of the pressures in the hepatic veins and the liver's tissue. */
export const liverFiltration = (venousRise: number, tissueRise: number): number =>
  1 + FILTERED * (REACHING.sinusoids * venousRise - tissueRise);

/** Ratio of the liver's lymph to that at rest, at most `maximum`; it dwindles as the pressure falls (mmHg). */
export const liverLymph = (tissueRise: number, maximum: number): number =>
  Math.min(maximum, tissueRise > 0 ? 1 + LYMPH_RISE * tissueRise : Math.exp(LYMPH_RISE * tissueRise));

/** mmHg of the tissue's pressure beyond which the capsule weeps into the abdomen, 0 below. */
export const weeping = (tissueRise: number): number => Math.max(0, tissueRise - WEEPS_FROM);
