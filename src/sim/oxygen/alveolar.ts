/** Oxygen that the lungs offer: from breathed gas and height to the tension in a pulmonary vein. */

/** mmHg: water vapour at 37 degrees C, carbon dioxide in the alveoli; and the respiratory quotient (textbooks). */
const WATER = 47;
const CARBON_DIOXIDE = 40;
const QUOTIENT = 0.8;
/** mmHg lost between alveoli and pulmonary vein: gives the 97 % of physiology values, section 5, in air at sea level. */
const ALVEOLAR_TO_VEIN = 10;

/** mmHg; ISO 2533 standard atmosphere, metres above the sea */
export const barometricPressure = (altitude: number): number => 760 * (1 - 2.25577e-5 * altitude) ** 5.25588;

/**
 * mmHg, alveolar gas equation in full. Breathing is taken as unchanged by height (no fall of carbon dioxide), which understates
 * what a person who has got used to the height reaches.
 * @param inspiredOxygen 0..1
 */
export function pulmonaryVeinTension(inspiredOxygen: number, altitude: number): number {
  const alveolar =
    inspiredOxygen * (barometricPressure(altitude) - WATER) -
    CARBON_DIOXIDE * (inspiredOxygen + (1 - inspiredOxygen) / QUOTIENT);
  return Math.max(20, alveolar - ALVEOLAR_TO_VEIN);
}
