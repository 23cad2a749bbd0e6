/** How heart chambers contract: functions of the phase of a beat, 0..1 from the onset of ventricular contraction. */

/** Double Hill (Stergiopulos 1996; constants Mynard 2012, physiology values, section 4), before division by its peak. */
function doubleHill(phase: number): number {
  const rise = (phase / 0.269) ** 1.32;
  const fall = (phase / 0.452) ** 21.9;
  return rise / (1 + rise) / (1 + fall);
}

const PEAK = (() => {
  let peak = 0;
  for (let phase = 0; phase < 1; phase += 1e-4) peak = Math.max(peak, doubleHill(phase));
  return peak;
})();

/** Beyond it nothing would be left of the beat for filling. */
const LONGEST_SYSTOLE = 1.75;

/**
 * How much longer a part of the beat systole is than at the body's own resting rate: it shortens only as the square root of the
 * beat (Bazett, Heart 1920;7:353), so that a fast heart loses its filling time first.
 * @param rate ratio to the resting rate, above 0
 * @param contractility over that at rest: a heart driven by its nerves also relaxes sooner (Weissler, Circulation 1968;37:149: systolic
 *   times shorten under isoprenaline; size is a teaching value)
 */
export const systoleStretch = (rate: number, contractility: number): number =>
  Math.min(LONGEST_SYSTOLE, Math.sqrt(rate) * contractility ** -0.3);

/** 0 to 1: relaxed to fully contracted, at a phase (0 to 1) of the beat, systole being `stretch` times as long as usual */
export const ventricularActivation = (phase: number, stretch = 1): number =>
  doubleHill(phase / stretch) / PEAK;

/** Atrial contraction lasts 0.18 of a resting beat (physiology values, section 4); in junctional rhythm it begins with systole. */
const ATRIAL_WIDTH = 0.18;
export const JUNCTIONAL_CENTRE = 0.1;
/** Phase (0 to 1) of the atrium's peak in sinus rhythm, where its contraction ends as the ventricle's begins. */
export const sinusCentre = (stretch: number): number => 1 - (ATRIAL_WIDTH * stretch) / 2;

/** 0 to 1: relaxed to fully contracted, at a phase (0 to 1) of the beat, the peak being at `centre` */
export function atrialActivation(phase: number, centre: number, stretch = 1): number {
  const away = Math.abs(phase - centre) / (ATRIAL_WIDTH * stretch);
  return away < 0.5 ? 0.5 + 0.5 * Math.cos(2 * Math.PI * away) : 0;
}
