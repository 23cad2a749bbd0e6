/** From volumes to pressures: every wall's law at one moment. Arrays in, arrays out, since a number handed between functions that are not taken in whole is allocated again each time. */

import type { Ventricle } from "../network/circuit-network.ts";
import type { Point, Scratch, State } from "../network/compartments.ts";
import * as compartment from "../network/compartments.ts";
import { lungOpening } from "../network/lung-opening.ts";
import { roomIn } from "../network/vessels.ts";
import type { ClosedLoop } from "./forcing.ts";

// Own copies: an engine folds a module's own constants into the hot loop, not imported ones (measured on a cold solve, Node 20: two to three times slower).
const {
  AGAINST_MUSCLE,
  AGAINST_VEINS,
  AORTA,
  ARTERIES,
  ATRIUM,
  CONTRACTILITY,
  IVC,
  IVC_COLLAPSE,
  JUNCTION,
  LEFT_OPENING,
  LEG_COLLAPSE,
  LEGS,
  LUNG_LEFT,
  LUNG_RIGHT,
  MOUTH_OPENING,
  PULMONARY_VEINS,
  RIGHT_ATRIUM,
  RIGHT_OPENING,
  RIGHT_VENTRICLE,
  SPLANCHNIC,
  SPLANCHNIC_COLLAPSE,
  UPPER,
  UPPER_COLLAPSE,
  VEIN_OPENING,
  VENOUS_ROOM,
  VENTRICLE,
} = compartment;

/** Greatest exponent of a filling curve; beyond it the curve goes on straight, so that no guess of the solver overflows. */
const STEEPEST = 6;
/** Pa: how hard an emptying vein resists (1 mmHg), and the most that collapse multiplies its resistance by. */
const COLLAPSE_PRESSURE = 133.322387415;
const MAX_COLLAPSE = 400;
/** Least volume over unstressed volume that the laws are evaluated at. */
const MIN_FILLING = 0.02;
/**
 * Pa: a vein stiffens from here on (10 mmHg), and how fast (1/Pa; half as compliant 6 mmHg further on). Chosen so that straining fills
 * the limbs within its first seconds, judged on what standing up pools in the legs (teaching values).
 */
const STIFFENS = 10 * 133.322387415;
const STIFFENING = 1 / (12 * 133.322387415);
/** Part of the lower body's veins other than gut's and liver's that lies in the abdomen (pelvis, back): teaching value. */
export const LEGS_IN_BELLY = 0.3;

/** Fills the pressures (in Pa) of heart and arteries, of `state` at a half step of the cycle. */
export function heartPressures(
  { network, forcing }: ClosedLoop,
  half: number,
  regulated: Point,
  state: State,
  { pressures }: Scratch,
): void {
  const { unstressed, compliance, longAxisShare, longAxisVolume } = network;
  const inBeat = half % forcing.ventricle.length;
  const active = forcing.ventricle[inBeat] ?? 0;
  const kick = forcing.atrium[inBeat] ?? 0;
  const intrathoracic = forcing.intrathoracic[half % forcing.intrathoracic.length] ?? 0;
  const contractility = regulated[CONTRACTILITY];
  const atrial = network.atriumRelaxed + network.atriumContracted * kick;
  pressures[VENTRICLE] =
    intrathoracic + ventriclePressure(network.ventricle, active, contractility, state[VENTRICLE]);
  // A ventricle's base descends as it empties and draws its atrium open.
  const drawn = longAxisShare * (state[VENTRICLE] - longAxisVolume);
  pressures[ATRIUM] = intrathoracic + atrial * (state[ATRIUM] - unstressed[ATRIUM] + drawn);
  if (network.connections.rightHeart) {
    const rightDrawn = longAxisShare * (state[RIGHT_VENTRICLE] - longAxisVolume);
    pressures[RIGHT_ATRIUM] =
      intrathoracic + atrial * (state[RIGHT_ATRIUM] - unstressed[RIGHT_ATRIUM] + rightDrawn);
    pressures[RIGHT_VENTRICLE] =
      intrathoracic +
      ventriclePressure(network.rightVentricle, active, contractility, state[RIGHT_VENTRICLE]);
  }
  pressures[AORTA] = intrathoracic + (state[AORTA] - unstressed[AORTA]) / compliance[AORTA];
  pressures[ARTERIES] = (state[ARTERIES] - unstressed[ARTERIES]) / compliance[ARTERIES];
  const junctionElastance = 1 / compliance[JUNCTION] + network.junctionContracted * kick;
  pressures[JUNCTION] = intrathoracic + (state[JUNCTION] - unstressed[JUNCTION]) * junctionElastance;
  pressures[LUNG_LEFT] = intrathoracic + (state[LUNG_LEFT] - unstressed[LUNG_LEFT]) / compliance[LUNG_LEFT];
  pressures[LUNG_RIGHT] =
    intrathoracic + (state[LUNG_RIGHT] - unstressed[LUNG_RIGHT]) / compliance[LUNG_RIGHT];
}

/** Fills the pressures (in Pa) of the veins, at a half step of the cycle, and how far those that empty have collapsed. */
export function veinPressures(
  { network, forcing }: ClosedLoop,
  half: number,
  regulated: Point,
  state: State,
  { pressures, collapse, against }: Scratch,
): void {
  const { unstressed, compliance, venousTone } = network;
  const inBreath = half % forcing.intrathoracic.length;
  const abdominal = forcing.abdominal[inBreath] ?? 0;
  const room = regulated[VENOUS_ROOM];
  const upper = roomIn(room, venousTone.upper) * unstressed[UPPER];
  const splanchnic = roomIn(room, venousTone.splanchnic) * unstressed[SPLANCHNIC];
  const legs = roomIn(room, venousTone.legs) * unstressed[LEGS];
  pressures[UPPER] = veinPressure(state[UPPER], upper, compliance[UPPER]);
  pressures[SPLANCHNIC] = abdominal + veinPressure(state[SPLANCHNIC], splanchnic, compliance[SPLANCHNIC]);
  const muscle = forcing.muscle[inBreath] ?? 0;
  const legVeins = LEGS_IN_BELLY * abdominal + veinPressure(state[LEGS], legs, compliance[LEGS]);
  pressures[LEGS] = muscle + legVeins;
  against[AGAINST_VEINS] = legVeins;
  // Small veins fall shut at the pressure of the tissue about them: empty ones draw no more through.
  against[AGAINST_MUSCLE] = muscle / forcing.muscleShare + Math.max(0, legVeins);
  pressures[IVC] = abdominal + veinPressure(state[IVC], unstressed[IVC], compliance[IVC]);
  pressures[PULMONARY_VEINS] =
    (forcing.intrathoracic[inBreath] ?? 0) +
    veinPressure(state[PULMONARY_VEINS], unstressed[PULMONARY_VEINS], compliance[PULMONARY_VEINS]);
  collapse[UPPER_COLLAPSE] = collapseFactor(state[UPPER], upper);
  collapse[SPLANCHNIC_COLLAPSE] = collapseFactor(state[SPLANCHNIC], splanchnic);
  collapse[LEG_COLLAPSE] = collapseFactor(state[LEGS], legs);
  collapse[IVC_COLLAPSE] = collapseFactor(state[IVC], unstressed[IVC]);
}

/**
 * Part of a pulmonary vein's conductance that the atrial muscle about its mouth takes at full contraction: the mouth's area varies by
 * 27 +- 12 % over a beat (Hauser, Am Heart J 2006;152:974.e1, abstract), its conductance as the square of that.
 */
const MOUTH_CLOSES = 1 - (1 - 0.27) ** 2;

/** Fills how far the lungs' vessels stand open on each side of their beds: ratios to a vessel at no pressure, at a half step of the cycle. */
export function lungOpenings(
  { network, forcing }: ClosedLoop,
  half: number,
  { pressures, openings }: Scratch,
): void {
  const { distensibility, lungHeight } = network;
  const alveolar = forcing.alveolar[half % forcing.alveolar.length] ?? 0;
  openings[LEFT_OPENING] = lungOpening(distensibility, pressures[LUNG_LEFT] - alveolar, lungHeight);
  openings[RIGHT_OPENING] = lungOpening(distensibility, pressures[LUNG_RIGHT] - alveolar, lungHeight);
  openings[VEIN_OPENING] = lungOpening(distensibility, pressures[PULMONARY_VEINS] - alveolar, lungHeight);
  openings[MOUTH_OPENING] = 1 - MOUTH_CLOSES * (forcing.atrium[half % forcing.atrium.length] ?? 0);
}

/** Time-varying elastance over an exponential filling curve. */
function ventriclePressure(
  chamber: Ventricle,
  active: number,
  contractility: number,
  volume: number,
): number {
  const stretch = volume - chamber.unstressed;
  const exponent = chamber.passiveRate * stretch;
  const growth =
    exponent < STEEPEST ? Math.exp(exponent) - 1 : Math.exp(STEEPEST) * (1 + exponent - STEEPEST) - 1;
  return (
    active * contractility * chamber.elastance * stretch + (1 - active) * chamber.passivePressure * growth
  );
}

/**
 * Linear above the unstressed volume, stiffer beyond 10 mmHg as its collagen takes the load; below the unstressed volume an emptying
 * tube that gives way at little pressure and cannot be emptied.
 */
function veinPressure(volume: number, unstressed: number, compliance: number): number {
  if (volume >= unstressed) {
    const stretched = (volume - unstressed) / compliance;
    const beyond = stretched - STIFFENS;
    return beyond > 0 ? stretched + STIFFENING * beyond * beyond : stretched;
  }
  const filled = Math.max(MIN_FILLING, volume / unstressed);
  return COLLAPSE_PRESSURE * (1 - 1 / (filled * Math.sqrt(filled)));
}

/** Resistance of a vein falls off as its area: by the square of its filling. */
function collapseFactor(volume: number, unstressed: number): number {
  if (volume >= unstressed) return 1;
  const filled = Math.max(MIN_FILLING, volume / unstressed);
  return Math.min(MAX_COLLAPSE, 1 / (filled * filled));
}
