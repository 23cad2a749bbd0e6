/** All that depends on time alone, tabulated at half steps before the run, so that the hot loop looks up and never computes it. */

import { referenceSet } from "../../body/growth.ts";
import { wordSetting } from "../../parameters/parameters.ts";
import type { CirculationRequest } from "../../parameters/request.ts";
import { fromMmHg } from "../../units.ts";
import type { Network } from "../network/circuit-network.ts";
import { fastestRate } from "../network/stiffness.ts";
import { exertion, squeezing } from "../regulation/exercise.ts";
import { breathPattern, filling } from "./breathing.ts";
import {
  atrialActivation,
  JUNCTIONAL_CENTRE,
  sinusCentre,
  systoleStretch,
  ventricularActivation,
} from "./chamber.ts";

/** Activations and outside pressures of one cycle, tabulated. */
export interface Forcing {
  /** number of beats in a cycle */
  readonly beats: number;
  /** number of steps of one beat; the whole cycle has beats times as many */
  readonly steps: number;
  /** [2*steps], by half step of a beat: 0 to 1 */
  readonly ventricle: Float64Array;
  readonly atrium: Float64Array;
  /** [2*steps*beats], by half step of a breath: Pa */
  readonly intrathoracic: Float64Array;
  readonly abdominal: Float64Array;
  readonly alveolar: Float64Array;
  readonly muscle: Float64Array;
  /** Pa, mean over a breath */
  readonly meanChest: number;
  /** fraction of the leg veins that `muscle` was scaled by */
  readonly muscleShare: number;
  /** Shapes the beat for a heart at this factor on the rate that the tables' length was chosen for. */
  readonly beatAt: (rateFactor: number) => void;
}

/** The closed loop as the equations read it: how it is connected, and what acts on it at each moment of a cycle. */
export interface ClosedLoop {
  readonly network: Network;
  readonly forcing: Forcing;
}

/** s: greatest step; and greatest product of step and the network's fastest rate (the stepper is stable to 2.78). The half-step bar and the independent integrator are tests. */
const GREATEST_STEP = 1.5e-3;
const GREATEST_PRODUCT = 1.8;
/** Samples that the traces keep of one beat; steps are a multiple of it. */
export const SAMPLES_PER_BEAT = 60;
/** Beats a breath may span. */
const MAX_BEATS = 16;
/** Contractions of the calves a minute (walking; common practice, no source), and the share of a contraction's time. */
const CADENCE = 55;
/**
 * A breath is locked to a whole number of beats and holds a whole number of calf contractions, so that everything repeats.
 * @param heartRate 1/min before the reflex acts
 * @param fineness divides the step (tests halve it)
 */
export function forcingOf(
  request: CirculationRequest,
  network: Network,
  heartRate: number,
  fineness: number,
): Forcing {
  const pattern = breathPattern(request);
  const { musclePressure, muscleShare, contractility } = exertion(request);
  const breathRate = pattern.rate > 0 ? pattern.rate : musclePressure > 0 ? 15 : heartRate;
  const beats = Math.min(MAX_BEATS, Math.max(1, Math.round(heartRate / breathRate)));
  const step = Math.min(GREATEST_STEP, GREATEST_PRODUCT / fastestRate(network));
  const steps = SAMPLES_PER_BEAT * Math.ceil(60 / heartRate / step / SAMPLES_PER_BEAT) * fineness;
  const contractions = Math.max(1, Math.round((CADENCE * beats) / heartRate));
  const length = 2 * steps * beats;
  const filled = table(length, filling);
  const breath = (value: (filled: number) => number) => filled.map((part) => fromMmHg(value(part)));
  const ventricle = new Float64Array(2 * steps);
  const atrium = new Float64Array(2 * steps);
  const intrathoracic = breath(pattern.intrathoracic);
  const shape = beatShape(request);
  const restingRate = referenceSet(request.stage, request.body.bsa).heartRate;
  let shapedFor = Number.NaN;
  return {
    beats,
    steps,
    ventricle,
    atrium,
    intrathoracic,
    abdominal: breath(pattern.abdominal),
    alveolar: breath(pattern.alveolar),
    muscle:
      musclePressure > 0
        ? table(length, (phase) => fromMmHg(musclePressure * muscleShare * squeezing(contractions * phase)))
        : new Float64Array(length),
    meanChest: intrathoracic.reduce((sum, value) => sum + value, 0) / length,
    muscleShare,
    beatAt(rateFactor) {
      if (Math.abs(rateFactor - shapedFor) < SAME_RATE) return;
      shapedFor = rateFactor;
      const stretch = systoleStretch((heartRate * rateFactor) / restingRate, contractility);
      shape(stretch, ventricle, atrium);
    },
  };
}

/** Factors on heart rate that differ by less give one beat. */
const SAME_RATE = 1e-7;

/** Fills the tables of one beat (0..1) by the rhythm that is asked for. */
function beatShape(request: CirculationRequest) {
  const rhythm = wordSetting(request, "rhythm");
  return (stretch: number, ventricle: Float64Array, atrium: Float64Array): void => {
    const centre = rhythm === "junctional" ? JUNCTIONAL_CENTRE : sinusCentre(stretch);
    const contracts = rhythm !== "no-atrial-contraction" && rhythm !== "vvi";
    for (let i = 0; i < ventricle.length; i++) {
      const phase = i / ventricle.length;
      ventricle[i] = ventricularActivation(phase, stretch);
      atrium[i] = contracts ? atrialActivation(phase, centre, stretch) : 0;
    }
  };
}

/** A function of the phase (0..1) at evenly spaced points. */
function table(length: number, value: (phase: number) => number): Float64Array {
  const values = new Float64Array(length);
  for (let i = 0; i < length; i++) values[i] = value(i / length);
  return values;
}
