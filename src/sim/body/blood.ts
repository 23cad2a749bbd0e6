/** Blood as a Newtonian fluid. */

/** kg/m3 (usual value) */
export const BLOOD_DENSITY = 1060;

/** %, three times haemoglobin (g/dL; common practice, no source) */
export const haematocrit = (haemoglobin: number): number => 3 * haemoglobin;

/**
 * Pa.s. Lichtman 1987's curve against haematocrit (physiology values, section 9).
 * @param haemoglobin g/dL, 5..22
 */
export const bloodViscosity = (haemoglobin: number): number =>
  1e-3 * 10 ** (0.01138 * haematocrit(haemoglobin) + 0.03699);

/** Haemoglobin (g/dL) that resistances are stated at. */
const STATED_AT = 14;

/**
 * Resistance of any bed over what it is at {@link STATED_AT}, the haemoglobin that the reference sets' resistances hold for: a ratio of
 * viscosities, as by Poiseuille's law.
 * @param haemoglobin g/dL, 5..22
 */
export const relativeViscosity = (haemoglobin: number): number =>
  bloodViscosity(haemoglobin) / bloodViscosity(STATED_AT);
