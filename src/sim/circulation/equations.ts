/** The right-hand side: pressures from volumes, flows from pressures, rates of change from flows. The hot loop of the circulation. */

import type { Network, Path, Ventricle } from "./circuit-network.ts";
import * as compartment from "./compartments.ts";
import type { Forcing } from "./forcing.ts";

// Own copies: an engine folds a module's own constants into the hot loop, not imported ones (measured: 8 times slower).
const {
  AORTA,
  AORTA_FLOW,
  ARTERIES,
  ATRIUM,
  IVC,
  IVC_FLOW,
  JUNCTION,
  LEFT_FLOW,
  LEGS,
  LUNG_LEFT,
  LUNG_RIGHT,
  PULMONARY_VEINS,
  RIGHT_ATRIUM,
  RIGHT_FLOW,
  RIGHT_VENTRICLE,
  SPLANCHNIC,
  SVC_FLOW,
  UPPER,
  VENTRICLE,
  VOLUMES,
} = compartment;

/** What one evaluation leaves behind for whoever records: Pa, m3/s. */
export interface Scratch {
  /** [VOLUMES], against atmosphere */
  readonly pressures: Float64Array;
  /** [FLOWS.length] */
  readonly flows: Float64Array;
  /** factors (>= 1) on the resistance out of collapsing veins: upper, splanchnic, legs, ivc */
  readonly collapse: Float64Array;
}

export const scratch = (): Scratch => ({
  pressures: new Float64Array(VOLUMES),
  flows: new Float64Array(compartment.FLOWS.length),
  collapse: new Float64Array(4),
});

/** Greatest exponent of a filling curve; beyond it the curve goes on straight, so that no guess of the solver overflows. */
const STEEPEST = 6;
/** Pa: how hard an emptying vein resists (1 mmHg), and the most that collapse multiplies its resistance by. */
const COLLAPSE_PRESSURE = 133.322387415;
const MAX_COLLAPSE = 400;
/** Least volume over unstressed volume that the laws are evaluated at. */
const MIN_FILLING = 0.02;

/**
 * Fills `rates` [STATES] with d(state)/dt.
 * @param state m3 and m3/s, see compartments.ts
 * @param half half step since the start of the cycle
 */
export function derivative(
  network: Network,
  forcing: Forcing,
  half: number,
  resistanceFactor: number,
  state: Float64Array,
  rates: Float64Array,
  { pressures, flows, collapse }: Scratch,
): void {
  const { connections, unstressed, compliance } = network;
  const inBeat = half % forcing.ventricle.length;
  const active = forcing.ventricle[inBeat]!;
  const atrial = network.atriumRelaxed + network.atriumContracted * forcing.atrium[inBeat]!;
  const inBreath = half % forcing.intrathoracic.length;
  const intrathoracic = forcing.intrathoracic[inBreath]!;
  const abdominal = forcing.abdominal[inBreath]!;
  const alveolar = forcing.alveolar[inBreath]!;
  const muscle = forcing.muscle[inBreath]!;

  const ventricle = intrathoracic + ventriclePressure(network.ventricle, active, state[VENTRICLE]!);
  const atrium = intrathoracic + atrial * (state[ATRIUM]! - unstressed[ATRIUM]!);
  const aorta = intrathoracic + (state[AORTA]! - unstressed[AORTA]!) / compliance[AORTA]!;
  const arteries = (state[ARTERIES]! - unstressed[ARTERIES]!) / compliance[ARTERIES]!;
  const upper = veinPressure(state[UPPER]!, unstressed[UPPER]!, compliance[UPPER]!);
  const splanchnic =
    abdominal + veinPressure(state[SPLANCHNIC]!, unstressed[SPLANCHNIC]!, compliance[SPLANCHNIC]!);
  const legs = muscle + veinPressure(state[LEGS]!, unstressed[LEGS]!, compliance[LEGS]!);
  const ivc = abdominal + veinPressure(state[IVC]!, unstressed[IVC]!, compliance[IVC]!);
  const junction = intrathoracic + (state[JUNCTION]! - unstressed[JUNCTION]!) / compliance[JUNCTION]!;
  const lungLeft = intrathoracic + (state[LUNG_LEFT]! - unstressed[LUNG_LEFT]!) / compliance[LUNG_LEFT]!;
  const lungRight = intrathoracic + (state[LUNG_RIGHT]! - unstressed[LUNG_RIGHT]!) / compliance[LUNG_RIGHT]!;
  const pulmonaryVeins =
    intrathoracic +
    veinPressure(state[PULMONARY_VEINS]!, unstressed[PULMONARY_VEINS]!, compliance[PULMONARY_VEINS]!);

  const upperCollapse = collapseFactor(state[UPPER]!, unstressed[UPPER]!);
  const splanchnicCollapse = collapseFactor(state[SPLANCHNIC]!, unstressed[SPLANCHNIC]!);
  const legCollapse = collapseFactor(state[LEGS]!, unstressed[LEGS]!);
  const ivcCollapse = collapseFactor(state[IVC]!, unstressed[IVC]!);

  const atrioventricular = valveFlow(
    network.atrioventricularValve,
    network.atrioventricularLeak,
    atrium - ventricle,
  );
  const semilunar = valveFlow(network.semilunarValve, network.semilunarLeak, ventricle - aorta);
  const upperBed = (arteries - upper) / (network.upperBed * resistanceFactor);
  const splanchnicBed = (arteries - splanchnic) / (network.splanchnicBed * resistanceFactor);
  const legBed = (arteries - legs) / (network.legBed * resistanceFactor);
  const collateralLeft = (arteries - lungLeft) * network.collateralLeft;
  const collateralRight = (arteries - lungRight) * network.collateralRight;
  const hepatic = ((splanchnic - ivc) * network.hepatic) / splanchnicCollapse;
  const legHead = (legs - ivc) * network.legVeins;
  const legVeins = legHead > 0 ? legHead / legCollapse : legHead * network.legValveLeak;
  const fenestration = network.fenestration ? pathFlow(network.fenestration, junction - atrium) : 0;
  // A vessel in the lung is open by what its pressure exceeds the air about it by; below that it is shut (West's zones).
  const d = network.distensibility;
  const afterLung = fifthPower(1 + d * Math.max(0, pulmonaryVeins - alveolar));
  const bedLeft = network.lungLeft * (fifthPower(1 + d * Math.max(0, lungLeft - alveolar)) - afterLung);
  const bedRight = network.lungRight * (fifthPower(1 + d * Math.max(0, lungRight - alveolar)) - afterLung);
  const veinsOut = (pulmonaryVeins - atrium) * network.pulmonaryVeins;

  const aortaFlow = state[AORTA_FLOW]!;
  const svcFlow = state[SVC_FLOW]!;
  const ivcFlow = state[IVC_FLOW]!;
  const leftFlow = state[LEFT_FLOW]!;
  const rightFlow = state[RIGHT_FLOW]!;

  let rightAtrium = 0;
  let rightVentricle = 0;
  let rightAtrioventricular = 0;
  let rightSemilunar = 0;
  if (connections.rightHeart) {
    rightAtrium = intrathoracic + atrial * (state[RIGHT_ATRIUM]! - unstressed[RIGHT_ATRIUM]!);
    rightVentricle =
      intrathoracic + ventriclePressure(network.rightVentricle, active, state[RIGHT_VENTRICLE]!);
    rightAtrioventricular = valveFlow(
      network.atrioventricularValve,
      Number.POSITIVE_INFINITY,
      rightAtrium - rightVentricle,
    );
    rightSemilunar = valveFlow(network.semilunarValve, Number.POSITIVE_INFINITY, rightVentricle - junction);
  }
  const coronaryEnd = connections.rightHeart ? rightAtrium : atrium;
  const coronary = (arteries - coronaryEnd) / (network.coronary * resistanceFactor);

  const svcJoins = connections.svcInto === "junction";
  const ivcJoins = connections.ivcInto === "junction";
  const ivcToAtrium = connections.ivcInto === "atrium";
  const svcEnd = svcJoins ? junction : rightAtrium;
  const ivcEnd = ivcJoins ? junction : ivcToAtrium ? atrium : rightAtrium;

  rates[VENTRICLE] = atrioventricular - semilunar;
  rates[ATRIUM] =
    veinsOut +
    fenestration -
    atrioventricular +
    (ivcToAtrium ? ivcFlow : 0) +
    (connections.rightHeart ? 0 : coronary);
  rates[AORTA] = semilunar - aortaFlow;
  rates[ARTERIES] =
    aortaFlow - upperBed - splanchnicBed - legBed - coronary - collateralLeft - collateralRight;
  rates[UPPER] = upperBed - svcFlow;
  rates[SPLANCHNIC] = splanchnicBed - hepatic;
  rates[LEGS] = legBed - legVeins;
  rates[IVC] = hepatic + legVeins - ivcFlow;
  rates[JUNCTION] =
    (svcJoins ? svcFlow : 0) +
    (ivcJoins ? ivcFlow : 0) +
    rightSemilunar -
    leftFlow -
    rightFlow -
    fenestration;
  rates[LUNG_LEFT] = leftFlow + collateralLeft - bedLeft;
  rates[LUNG_RIGHT] = rightFlow + collateralRight - bedRight;
  rates[PULMONARY_VEINS] = bedLeft + bedRight - veinsOut;
  rates[RIGHT_ATRIUM] = connections.rightHeart ? svcFlow + ivcFlow + coronary - rightAtrioventricular : 0;
  rates[RIGHT_VENTRICLE] = rightAtrioventricular - rightSemilunar;

  const { svc: svcPath, ivc: ivcPath, left: leftPath, right: rightPath } = network.branches;
  rates[AORTA_FLOW] = (aorta - arteries - network.aortaResistance * aortaFlow) / network.aortaInertance;
  rates[SVC_FLOW] = (upper - svcEnd - pathLoss(svcPath, svcFlow, upperCollapse)) / svcPath.inertance;
  rates[IVC_FLOW] = (ivc - ivcEnd - pathLoss(ivcPath, ivcFlow, ivcCollapse)) / ivcPath.inertance;
  rates[LEFT_FLOW] = (junction - lungLeft - pathLoss(leftPath, leftFlow, 1)) / leftPath.inertance;
  rates[RIGHT_FLOW] = (junction - lungRight - pathLoss(rightPath, rightFlow, 1)) / rightPath.inertance;

  pressures[VENTRICLE] = ventricle;
  pressures[ATRIUM] = atrium;
  pressures[AORTA] = aorta;
  pressures[ARTERIES] = arteries;
  pressures[UPPER] = upper;
  pressures[SPLANCHNIC] = splanchnic;
  pressures[LEGS] = legs;
  pressures[IVC] = ivc;
  pressures[JUNCTION] = junction;
  pressures[LUNG_LEFT] = lungLeft;
  pressures[LUNG_RIGHT] = lungRight;
  pressures[PULMONARY_VEINS] = pulmonaryVeins;
  pressures[RIGHT_ATRIUM] = rightAtrium;
  pressures[RIGHT_VENTRICLE] = rightVentricle;
  flows[0] = atrioventricular;
  flows[1] = semilunar;
  flows[2] = upperBed;
  flows[3] = splanchnicBed;
  flows[4] = legBed;
  flows[5] = coronary;
  flows[6] = collateralLeft;
  flows[7] = collateralRight;
  flows[8] = hepatic;
  flows[9] = legVeins;
  flows[10] = fenestration;
  flows[11] = bedLeft;
  flows[12] = bedRight;
  flows[13] = veinsOut;
  flows[14] = rightAtrioventricular;
  flows[15] = rightSemilunar;
  collapse[0] = upperCollapse;
  collapse[1] = splanchnicCollapse;
  collapse[2] = legCollapse;
  collapse[3] = ivcCollapse;
}

/** Time-varying elastance over an exponential filling curve. */
function ventriclePressure(chamber: Ventricle, active: number, volume: number): number {
  const stretch = volume - chamber.unstressed;
  const exponent = chamber.passiveRate * stretch;
  const growth =
    exponent < STEEPEST ? Math.exp(exponent) - 1 : Math.exp(STEEPEST) * (1 + exponent - STEEPEST) - 1;
  return active * chamber.elastance * stretch + (1 - active) * chamber.passivePressure * growth;
}

/** Linear above the unstressed volume; below it an emptying tube that gives way at little pressure and cannot be emptied. */
function veinPressure(volume: number, unstressed: number, compliance: number): number {
  if (volume >= unstressed) return (volume - unstressed) / compliance;
  const filled = Math.max(MIN_FILLING, volume / unstressed);
  return COLLAPSE_PRESSURE * (1 - 1 / (filled * Math.sqrt(filled)));
}

/** Resistance of a vein falls off as its area: by the square of its filling. */
function collapseFactor(volume: number, unstressed: number): number {
  if (volume >= unstressed) return 1;
  const filled = Math.max(MIN_FILLING, volume / unstressed);
  return Math.min(MAX_COLLAPSE, 1 / (filled * filled));
}

/** Flow that a head drives through a q + b q|q|. */
function pathFlow(path: Path, head: number): number {
  return (2 * head) / (path.a + Math.sqrt(path.a * path.a + 4 * path.b * Math.abs(head)));
}

/** Forward only, but for the leak. The leak's linear part is the valve's own, by the ratio of the areas. */
function valveFlow(valve: Path, leak: number, head: number): number {
  if (head >= 0) return pathFlow(valve, head);
  if (leak === Number.POSITIVE_INFINITY) return 0;
  const a = valve.a * Math.sqrt(leak / valve.b);
  return (2 * head) / (a + Math.sqrt(a * a - 4 * leak * head));
}

const pathLoss = (path: Path, flow: number, collapse: number): number =>
  (path.a * collapse + path.b * Math.abs(flow)) * flow;

function fifthPower(x: number): number {
  const square = x * x;
  return square * square * x;
}
