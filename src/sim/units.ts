/** The only unit conversions in the code. Inside `src/sim` all is SI; at every public boundary values are in clinical units. */

/** Pa in one mmHg (conventional millimetre of mercury, 133.322 Pa). */
export const PASCAL_PER_MMHG = 133.322387415;
const M3S_PER_L_MIN = 1e-3 / 60;

/** mmHg -> Pa */
export const fromMmHg = (mmHg: number): number => mmHg * PASCAL_PER_MMHG;
/** Pa -> mmHg */
export const toMmHg = (pascal: number): number => pascal / PASCAL_PER_MMHG;
/** cmH2O -> mmHg (1 cmH2O = 98.0665 Pa) */
export const mmHgFromWater = (cmH2O: number): number => (cmH2O * 98.0665) / PASCAL_PER_MMHG;
/** L/min -> m3/s */
export const fromLitresPerMinute = (flow: number): number => flow * M3S_PER_L_MIN;
/** m3/s -> L/min */
export const toLitresPerMinute = (flow: number): number => flow / M3S_PER_L_MIN;
/** Wood units (mmHg.min/L) -> Pa.s/m3 */
export const fromWood = (wood: number): number => (wood * PASCAL_PER_MMHG) / M3S_PER_L_MIN;
/** Pa.s/m3 -> Wood units */
export const toWood = (resistance: number): number => (resistance * M3S_PER_L_MIN) / PASCAL_PER_MMHG;
/** mm -> m */
export const fromMillimetre = (mm: number): number => mm * 1e-3;
/** m -> mm */
export const toMillimetre = (metre: number): number => metre * 1e3;
/** mL -> m3 */
export const fromMillilitre = (mL: number): number => mL * 1e-6;
/** m3 -> mL */
export const toMillilitre = (m3: number): number => m3 * 1e6;
/** W -> mW */
export const toMilliwatt = (watt: number): number => watt * 1e3;
/** mPa.s -> Pa.s */
export const fromMillipascalSecond = (viscosity: number): number => viscosity * 1e-3;
const CUBIC_METRE_PER_ML = 1e-6;
/** mmHg.s/mL -> Pa.s/m3 */
export const fromResistance = (value: number): number => (value * PASCAL_PER_MMHG) / CUBIC_METRE_PER_ML;
/** mmHg.s2/mL2 -> Pa.s2/m6 */
export const fromQuadraticLoss = (value: number): number =>
  (value * PASCAL_PER_MMHG) / (CUBIC_METRE_PER_ML * CUBIC_METRE_PER_ML);
/** mL/mmHg -> m3/Pa */
export const fromCompliance = (value: number): number => (value * CUBIC_METRE_PER_ML) / PASCAL_PER_MMHG;
/** mmHg/mL -> Pa/m3 */
export const fromElastance = (value: number): number => (value * PASCAL_PER_MMHG) / CUBIC_METRE_PER_ML;
/** Pa/m3 -> mmHg/mL */
export const toElastance = (value: number): number => (value * CUBIC_METRE_PER_ML) / PASCAL_PER_MMHG;
/** 1/mL -> 1/m3 */
export const fromPerMillilitre = (value: number): number => value / CUBIC_METRE_PER_ML;
/** 1/mmHg -> 1/Pa */
export const fromPerMmHg = (value: number): number => value / PASCAL_PER_MMHG;
/** mm2 -> m2 */
export const fromSquareMillimetre = (area: number): number => area * 1e-6;
/** Pa.s -> mPa.s */
export const toMillipascalSecond = (viscosity: number): number => viscosity * 1e3;
