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

/** 0 relaxed .. 1 fully contracted */
export const ventricularActivation = (phase: number): number => doubleHill(phase) / PEAK;

/** Atrial contraction lasts 0.18 of a beat about 0.85 (physiology values, section 4); in junctional rhythm it falls into systole. */
const ATRIAL_WIDTH = 0.18;
export const SINUS_CENTRE = 0.85;
export const JUNCTIONAL_CENTRE = 0.2;

/** 0 relaxed .. 1 fully contracted */
export function atrialActivation(phase: number, centre: number): number {
  const away = Math.abs(phase - centre) / ATRIAL_WIDTH;
  return away < 0.5 ? 0.5 + 0.5 * Math.cos(2 * Math.PI * away) : 0;
}
