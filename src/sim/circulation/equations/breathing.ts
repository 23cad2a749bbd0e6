/** Pressures that act from outside: chest, belly, alveoli. All in mmHg above their mean in quiet breathing at rest, air above atmosphere. */
import { present } from "../../checked/present.ts";
import { findParameter, numberSetting, wordSetting } from "../../parameters/parameters.ts";
import type { CirculationRequest } from "../../parameters/request.ts";
import { mmHgFromWater } from "../../units.ts";
import { exertion } from "../regulation/exercise.ts";

/** Shares of a quiet breath: drawing in, letting go, rest (in to out as 1 to 2; common practice, no source). */
export const INSPIRATORY_SHARE = 0.36;
const LETTING_GO_SHARE = 0.32;
/** mean of {@link filling} over a breath */
const MEAN_FILLING = (INSPIRATORY_SHARE + LETTING_GO_SHARE) / 2;
/** mmHg, pleural at end of expiration, and its swing in the quiet breath that the filling curves are stated at. */
const END_EXPIRATORY_PLEURAL = -3.7;
const QUIET_SWING = present(findParameter("breathingDepth")).default as number;
const QUIET_MEAN = QUIET_SWING * MEAN_FILLING;
const MEAN_PLEURAL = END_EXPIRATORY_PLEURAL - QUIET_MEAN;
/**
 * Rise of abdominal pressure over fall of pleural pressure as the diaphragm descends: so little that the SVC still fills with the breath
 * (Wei, Ann Thorac Surg 2016;101:1818), judged on how the IVC follows it (Hjortdal 2003; Wei). In effort the abdomen's muscles push
 * while breathing out, and undo it by this many METs above rest (teaching value).
 */
const ABDOMINAL_SHARE = 0.3;
const BELLY_UNDONE = 2.5;
/** Part of a lasting rise of the abdomen's pressure that reaches the chest (20-80 %, about half; Malbrain, Intensive Care Med 2006;32:1722, from memory). */
const CHEST_SHARE = 0.5;
/** Share of a ventilator's pleural rise that the passive diaphragm hands on to the abdomen (teaching value). */
const ABDOMINAL_SHARE_PASSIVE = 0.5;
/** Share of alveolar pressure that reaches the pleura: lung and chest wall equally stiff (textbooks). */
const PLEURAL_TRANSMISSION = 0.5;

/** Outside pressures through one breath. */
export interface BreathPattern {
  /** 1/min; 0 = nothing moves */
  readonly rate: number;
  /** mmHg at a point of the breath, `filling` 0 at end of expiration, 1 at end of inspiration */
  readonly intrathoracic: (filling: number) => number;
  readonly abdominal: (filling: number) => number;
  readonly alveolar: (filling: number) => number;
}

/** The pattern (mmHg above the mean of a quiet breath) of the request's way of breathing. */
export function breathPattern(request: CirculationRequest): BreathPattern {
  const setting = (name: string) => numberSetting(request, name);
  const abdominal = setting("abdominalPressure");
  const lifted = CHEST_SHARE * abdominal;
  const effort = exertion(request);
  const above = setting("metabolicEquivalents") - 1;
  const bellyShare = ABDOMINAL_SHARE * Math.max(0, 1 - above / BELLY_UNDONE);
  const rate = setting("breathingRate") * effort.breathingRate;
  const drawn = (swing: number, perMinute: number): BreathPattern => ({
    rate: perMinute,
    intrathoracic: (filling) => lifted + QUIET_MEAN - swing * filling,
    abdominal: (filling) => abdominal + bellyShare * (swing * filling - QUIET_MEAN),
    alveolar: () => 0,
  });
  switch (wordSetting(request, "breathing")) {
    case "deep":
      return drawn(setting("deepBreathingDepth"), Math.max(6, 0.6 * rate));
    case "held":
      return { rate: 0, intrathoracic: () => lifted, abdominal: () => abdominal, alveolar: () => 0 };
    case "valsalva": {
      const valsalva = setting("valsalvaPressure");
      return {
        rate: 0,
        intrathoracic: () => valsalva - MEAN_PLEURAL,
        // The diaphragm is slack: what squeezes the chest squeezes the abdomen as much.
        abdominal: () => abdominal + valsalva - MEAN_PLEURAL,
        // No air moves, so the lungs keep their stretch: the pleura is squeezed, and the air by as much.
        alveolar: () => valsalva - MEAN_PLEURAL,
      };
    }
    case "ventilator": {
      const low = mmHgFromWater(setting("endExpiratoryPressure"));
      const high = Math.max(low, mmHgFromWater(setting("ventilatorPressure")));
      const alveolar = (filling: number) => low + (high - low) * filling;
      const pleura = (filling: number) => PLEURAL_TRANSMISSION * alveolar(filling);
      return {
        rate,
        alveolar,
        intrathoracic: (filling) => lifted + QUIET_MEAN + pleura(filling),
        abdominal: (filling) => abdominal + ABDOMINAL_SHARE_PASSIVE * pleura(filling),
      };
    }
    default:
      return drawn(setting("breathingDepth") * effort.breathingDepth, rate);
  }
}

/** s into a Valsalva manoeuvre at which it is reported: nothing about it is steady, and few hold it longer. */
export const VALSALVA_SECONDS = 10;

/** mmHg above atmosphere, of a chest pressure given above its quiet mean. */
export const pleuralPressure = (intrathoracic: number): number => intrathoracic + MEAN_PLEURAL;

/** How far the chest is filled, 0 to 1, at `phase` (0 to 1) of a breath: in and out by half cosines, then rest. */
export function filling(phase: number): number {
  if (phase < INSPIRATORY_SHARE) return 0.5 - 0.5 * Math.cos((Math.PI * phase) / INSPIRATORY_SHARE);
  const lettingGo = (phase - INSPIRATORY_SHARE) / LETTING_GO_SHARE;
  return lettingGo < 1 ? 0.5 + 0.5 * Math.cos(Math.PI * lettingGo) : 0;
}
