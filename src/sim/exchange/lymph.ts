/** Lymph flow over that at rest (teaching function, physiology values, section 8: 1 at -3 mmHg, 11 at 0, 18 at +2). */
export function lymphRatio(interstitialPressure: number, maximum: number): number {
  return maximum / (1 + Math.exp(-(interstitialPressure + 0.2) / 0.95));
}
