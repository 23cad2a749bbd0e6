/** Oxygen that the lungs offer: from breathed gas and height to the tension and saturation in a pulmonary vein. */
import { numberSetting } from "../parameters/parameters.ts";
import type { CirculationRequest } from "../parameters/request.ts";
import { saturationOf } from "./content.ts";

/** mmHg: water vapour at 37 degrees C; and the respiratory quotient (textbooks). */
const WATER = 47;
const QUOTIENT = 0.8;
/** Part of the alveolar tension lost between alveoli and pulmonary vein: gives the 97 % of physiology values, section 5, in air at sea level. */
const LOST_TO_VEIN = 0.1;
/**
 * Saturation below which breathing rises, and how much more air each part of saturation lost below it calls for (linear in
 * saturation: Rebuck & Woodley, J Appl Physiol 1975;38:16, abstract; size from memory of Weil, J Clin Invest 1970;49:1061, with carbon
 * dioxide let fall).
 */
const DRIVE_BELOW = 0.97;
const DRIVE = 2.2;

/** mmHg; ISO 2533 standard atmosphere, metres above the sea */
export const barometricPressure = (altitude: number): number => 760 * (1 - 2.25577e-5 * altitude) ** 5.25588;

interface Alveoli {
  /** mmHg */
  readonly oxygen: number;
  readonly carbonDioxide: number;
}

/** Alveolar gas equation in full. */
const alveolarTension = (inspired: number, altitude: number, carbonDioxide: number): number =>
  inspired * (barometricPressure(altitude) - WATER) - carbonDioxide * (inspired + (1 - inspired) / QUOTIENT);

/** Where breathing, which lowers carbon dioxide, and the want of oxygen that drives it meet: by halving. */
function alveoli(request: CirculationRequest): Alveoli {
  const inspired = numberSetting(request, "inspiredOxygen") / 100;
  const altitude = numberSetting(request, "altitude");
  const usual = numberSetting(request, "carbonDioxide");
  let [low, high] = [usual / 3, usual];
  for (let i = 0; i < 40; i++) {
    const middle = (low + high) / 2;
    const oxygen = alveolarTension(inspired, altitude, middle);
    const wanted = usual / (1 + DRIVE * Math.max(0, DRIVE_BELOW - veinSaturation(oxygen, middle)));
    if (middle < wanted) low = middle;
    else high = middle;
  }
  const carbonDioxide = (low + high) / 2;
  return { oxygen: alveolarTension(inspired, altitude, carbonDioxide), carbonDioxide };
}

const veinTension = (oxygen: number, carbonDioxide: number): number =>
  Math.max(5, oxygen * (1 - LOST_TO_VEIN)) * bohr(carbonDioxide);

/** Factor on tension that puts a fall of carbon dioxide (pH 0.008 for each mmHg) on the curve of pH 7.4 (Severinghaus 1979: 1.1 a unit of pH near its middle). */
const bohr = (carbonDioxide: number): number => Math.exp(1.1 * 0.008 * (40 - carbonDioxide));

const veinSaturation = (oxygen: number, carbonDioxide: number): number =>
  saturationOf(veinTension(oxygen, carbonDioxide));

/** mmHg in the alveoli */
export const alveolarOxygen = (request: CirculationRequest): number => alveoli(request).oxygen;

/** mmHg of oxygen in a pulmonary vein, on the curve of pH 7.4 */
export function pulmonaryVeinTension(request: CirculationRequest): number {
  const { oxygen, carbonDioxide } = alveoli(request);
  return veinTension(oxygen, carbonDioxide);
}

/** mmHg of carbon dioxide that breathing leaves */
export const alveolarCarbonDioxide = (request: CirculationRequest): number => alveoli(request).carbonDioxide;
