/** From pressures to the flows that follow from them at once. */

import type { Network, Path } from "../network/circuit-network.ts";
import type { Point, Scratch } from "../network/compartments.ts";
import * as compartment from "../network/compartments.ts";

// Own copies, as in pressures.ts.
const {
  AGAINST_MUSCLE,
  AGAINST_VEINS,
  AORTA,
  ARTERIES,
  ATRIUM,
  COLLATERAL_LEFT,
  COLLATERAL_RIGHT,
  CORONARY,
  CORONARY_FLOW,
  FENESTRATION,
  ATRIOVENTRICULAR_VALVE,
  IVC,
  JUNCTION,
  LEFT_OPENING,
  LEG_BED,
  LEG_COLLAPSE,
  LEG_VEINS,
  LEGS,
  LIVER,
  LUNG_BED_LEFT,
  LUNG_BED_RIGHT,
  LUNG_LEFT,
  LUNG_RIGHT,
  MOUTH_OPENING,
  PULMONARY_VEINS,
  PULMONARY_VEINS_OUT,
  SEMILUNAR_VALVE,
  RESISTANCE,
  RIGHT_ATRIUM,
  RIGHT_ATRIOVENTRICULAR_VALVE,
  RIGHT_OPENING,
  RIGHT_SEMILUNAR_VALVE,
  RIGHT_VENTRICLE,
  SPLANCHNIC,
  SPLANCHNIC_BED,
  SPLANCHNIC_COLLAPSE,
  UPPER,
  UPPER_BED,
  UPPER_FLOW,
  VEIN_OPENING,
  VENO_VENOUS,
  VENTRICLE,
  WORKING_MUSCLE,
} = compartment;

/** Fills the flows through valves and the hole. */
export function valveFlows(network: Network, { pressures, flows }: Scratch): void {
  const atrium = pressures[ATRIUM];
  const ventricle = pressures[VENTRICLE];
  const { atrioventricularValve, semilunarValve } = network;
  flows[ATRIOVENTRICULAR_VALVE] = valveFlow(
    atrioventricularValve,
    network.atrioventricularLeak,
    atrium - ventricle,
  );
  flows[SEMILUNAR_VALVE] = valveFlow(semilunarValve, network.semilunarLeak, ventricle - pressures[AORTA]);
  flows[FENESTRATION] = network.fenestration
    ? pathFlow(network.fenestration, pressures[JUNCTION] - atrium)
    : 0;
  if (!network.connections.rightHeart) return;
  const right = pressures[RIGHT_VENTRICLE];
  flows[RIGHT_ATRIOVENTRICULAR_VALVE] = valveFlow(
    atrioventricularValve,
    Number.POSITIVE_INFINITY,
    pressures[RIGHT_ATRIUM] - right,
  );
  flows[RIGHT_SEMILUNAR_VALVE] = valveFlow(
    semilunarValve,
    Number.POSITIVE_INFINITY,
    right - pressures[JUNCTION],
  );
}

/** Fills the flows through the beds of body and lungs and out of the veins. */
export function bedFlows(
  network: Network,
  regulated: Point,
  { pressures, flows, collapse, openings, against }: Scratch,
): void {
  const resistance = regulated[RESISTANCE];
  const arteries = pressures[ARTERIES];
  const upper = pressures[UPPER];
  const splanchnic = pressures[SPLANCHNIC];
  const legs = pressures[LEGS];
  const ivc = pressures[IVC];
  const atrium = pressures[ATRIUM];
  flows[UPPER_BED] = ((arteries - upper) * regulated[UPPER_FLOW]) / (network.upperBed * resistance);
  flows[SPLANCHNIC_BED] = (arteries - splanchnic) / (network.splanchnicBed * resistance);
  // Upright, the column in the leg's arteries adds what the column in its veins takes.
  const legArteries = arteries + network.legColumn;
  flows[WORKING_MUSCLE] =
    Math.max(0, legArteries - against[AGAINST_MUSCLE]) / (network.workingMuscle * resistance);
  flows[LEG_BED] =
    flows[WORKING_MUSCLE] + (legArteries - against[AGAINST_VEINS]) / (network.restOfLegs * resistance);
  const coronaryEnd = network.connections.rightHeart ? pressures[RIGHT_ATRIUM] : atrium;
  flows[CORONARY] = ((arteries - coronaryEnd) * regulated[CORONARY_FLOW]) / network.coronary;
  flows[COLLATERAL_LEFT] = (arteries - pressures[LUNG_LEFT]) * network.collateralLeft;
  flows[COLLATERAL_RIGHT] = (arteries - pressures[LUNG_RIGHT]) * network.collateralRight;
  flows[LIVER] = ((splanchnic - ivc) * network.hepatic) / collapse[SPLANCHNIC_COLLAPSE];
  const legHead = (legs - network.legColumn - ivc) * network.legVeins;
  flows[LEG_VEINS] = legHead > 0 ? legHead / collapse[LEG_COLLAPSE] : legHead * network.legValveLeak;
  flows[VENO_VENOUS] = upper > atrium ? (upper - atrium) * network.venoVenous : 0;
  flows[LUNG_BED_LEFT] = network.lungLeft * (openings[LEFT_OPENING] - openings[VEIN_OPENING]);
  flows[LUNG_BED_RIGHT] = network.lungRight * (openings[RIGHT_OPENING] - openings[VEIN_OPENING]);
  flows[PULMONARY_VEINS_OUT] =
    (pressures[PULMONARY_VEINS] - atrium) * network.pulmonaryVeins * openings[MOUTH_OPENING];
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
