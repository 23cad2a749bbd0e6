/** Body surface area. */

/** m2 from height (cm) and weight (kg), both above 0: Mosteller, N Engl J Med 1987;317:1098. */
export const mosteller = (height: number, weight: number): number => Math.sqrt((height * weight) / 3600);

/** m2 from height (cm) and weight (kg), both above 0: Haycock, J Pediatr 1978;93:62; 0.1 to 2.6 m2. */
export const haycock = (height: number, weight: number): number =>
  0.024265 * weight ** 0.5378 * height ** 0.3964;

/**
 * Weight (kg) that usually goes with a body surface area: a power law through 18.3 kg at 0.72 m2 and 63 kg at 1.72 m2
 * (the reference bodies). Fluid exchange and blood volume per kg use it.
 * @param bsa m2, above 0
 */
export const usualWeight = (bsa: number): number =>
  18.3 * (bsa / 0.72) ** (Math.log(63 / 18.3) / Math.log(1.72 / 0.72));
