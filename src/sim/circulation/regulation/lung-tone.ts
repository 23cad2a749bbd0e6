/** What makes the lungs' vessels narrower or wider than the index that is set: little oxygen, carbon dioxide and acid, a drug. */
import { alveolarOxygen } from "../../oxygen/alveolar.ts";
import { numberSetting } from "../../parameters/parameters.ts";
import type { CirculationRequest } from "../../parameters/request.ts";

/**
 * Hypoxic constriction, half of it at an alveolar tension of 46 mmHg and twofold when complete; a third more resistance at 3,500 m
 * (shape of Marshall, J Appl Physiol 1983;55:711, from memory; size after the rise of healthy persons' pressure at height).
 */
const HALF_TENSION = 46;
const STEEPNESS = 5;
const MAX_HYPOXIC = 1;
/** Resistance for each 0.1 of pH lost (Rudolph & Yuan, J Clin Invest 1966;45:399: little above 7.3 while oxygen is plentiful; from memory). */
const ACID_GAIN = 0.25;

/** Ratio of the lungs' resistance to that of the index that is set, above 0. */
export function lungTone(request: CirculationRequest): number {
  const tension = alveolarOxygen(request);
  const hypoxic = (at: number) => MAX_HYPOXIC / (1 + (at / HALF_TENSION) ** STEEPNESS);
  const acid = Math.max(0, (7.4 - arterialPh(request)) / 0.1);
  return (
    (1 + hypoxic(tension) - hypoxic(USUAL_TENSION)) *
    (1 + ACID_GAIN * acid) *
    (1 - numberSetting(request, "lungVasodilation") / 100)
  );
}

/** mmHg in the alveoli, in air at sea level */
const USUAL_TENSION = 100;

/** Acute: 0.008 for each mmHg of carbon dioxide (textbook), less what is missing of base (0.015 for each mmol/L). */
const arterialPh = (request: CirculationRequest): number =>
  7.4 -
  0.008 * (numberSetting(request, "carbonDioxide") - 40) -
  0.015 * numberSetting(request, "baseDeficit");
