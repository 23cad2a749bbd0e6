/** The right-hand side: pressures from volumes, flows from pressures, rates of change from flows. The hot loop of the circulation. */

import type { Network, Path } from "../network/circuit-network.ts";
import type { Point, Scratch, State } from "../network/compartments.ts";
import * as compartment from "../network/compartments.ts";
import { bedFlows, valveFlows } from "./flows.ts";
import type { ClosedLoop } from "./forcing.ts";
import { heartPressures, lungOpenings, veinPressures } from "./pressures.ts";

// Own copies, as in pressures.ts.
const {
  AORTA,
  AORTA_FLOW,
  ARTERIES,
  ATRIUM,
  COLLATERAL_LEFT,
  COLLATERAL_RIGHT,
  CORONARY,
  FENESTRATION,
  ATRIOVENTRICULAR_VALVE,
  IVC,
  IVC_COLLAPSE,
  IVC_FLOW,
  JUNCTION,
  LEFT_FLOW,
  LEG_BED,
  LEG_VEINS,
  LEGS,
  LIVER,
  LUNG_BED_LEFT,
  LUNG_BED_RIGHT,
  LUNG_LEFT,
  LUNG_RIGHT,
  PULMONARY_VEINS,
  PULMONARY_VEINS_OUT,
  SEMILUNAR_VALVE,
  RIGHT_ATRIUM,
  RIGHT_FLOW,
  RIGHT_ATRIOVENTRICULAR_VALVE,
  RIGHT_SEMILUNAR_VALVE,
  RIGHT_VENTRICLE,
  SPLANCHNIC,
  SPLANCHNIC_BED,
  SVC_FLOW,
  UPPER,
  UPPER_BED,
  UPPER_COLLAPSE,
  VENO_VENOUS,
  VENTRICLE,
} = compartment;

/** Pa: a great vein is pinched where it leaves the abdomen once it holds less than this over the pressure about it (Takata, J Appl Physiol 1990;69:1961: 1.0 mmHg). */
export const CLOSING = 133.322387415;

/**
 * Fills `left` with d(state)/dt and all that it is made of.
 * @param state m3 and m3/s, see compartments.ts
 * @param regulated holds the reflex factors in force
 * @param half half step since the start of the cycle
 */
export function derivative(
  loop: ClosedLoop,
  half: number,
  regulated: Point,
  state: State,
  left: Scratch,
): void {
  heartPressures(loop, half, regulated, state, left);
  veinPressures(loop, half, regulated, state, left);
  lungOpenings(loop, half, left);
  valveFlows(loop.network, left);
  bedFlows(loop.network, regulated, left);
  volumeRates(loop.network, state, left);
  flowRates(loop, half, state, left);
}

/** What flows in less what flows out. */
function volumeRates({ connections }: Network, state: State, { flows, rates }: Scratch): void {
  const svc = state[SVC_FLOW];
  const ivc = state[IVC_FLOW];
  const { rightHeart } = connections;
  const coronary = flows[CORONARY];
  const collateralLeft = flows[COLLATERAL_LEFT];
  const collateralRight = flows[COLLATERAL_RIGHT];
  const bedLeft = flows[LUNG_BED_LEFT];
  const bedRight = flows[LUNG_BED_RIGHT];
  const intoJunction =
    (connections.svcInto === "junction" ? svc : 0) + (connections.ivcInto === "junction" ? ivc : 0);
  rates[VENTRICLE] = flows[ATRIOVENTRICULAR_VALVE] - flows[SEMILUNAR_VALVE];
  rates[ATRIUM] =
    flows[PULMONARY_VEINS_OUT] +
    flows[FENESTRATION] +
    flows[VENO_VENOUS] -
    flows[ATRIOVENTRICULAR_VALVE] +
    (connections.ivcInto === "atrium" ? ivc : 0) +
    (rightHeart ? 0 : coronary);
  rates[AORTA] = flows[SEMILUNAR_VALVE] - state[AORTA_FLOW];
  rates[ARTERIES] =
    state[AORTA_FLOW] -
    flows[UPPER_BED] -
    flows[SPLANCHNIC_BED] -
    flows[LEG_BED] -
    coronary -
    collateralLeft -
    collateralRight;
  rates[UPPER] = flows[UPPER_BED] - svc - flows[VENO_VENOUS];
  rates[SPLANCHNIC] = flows[SPLANCHNIC_BED] - flows[LIVER];
  rates[LEGS] = flows[LEG_BED] - flows[LEG_VEINS];
  rates[IVC] = flows[LIVER] + flows[LEG_VEINS] - ivc;
  rates[JUNCTION] =
    intoJunction + flows[RIGHT_SEMILUNAR_VALVE] - state[LEFT_FLOW] - state[RIGHT_FLOW] - flows[FENESTRATION];
  rates[LUNG_LEFT] = state[LEFT_FLOW] + collateralLeft - bedLeft;
  rates[LUNG_RIGHT] = state[RIGHT_FLOW] + collateralRight - bedRight;
  rates[PULMONARY_VEINS] = bedLeft + bedRight - flows[PULMONARY_VEINS_OUT];
  rates[RIGHT_ATRIUM] = rightHeart ? svc + ivc + coronary - flows[RIGHT_ATRIOVENTRICULAR_VALVE] : 0;
  rates[RIGHT_VENTRICLE] = flows[RIGHT_ATRIOVENTRICULAR_VALVE] - flows[RIGHT_SEMILUNAR_VALVE];
}

/** How the five flows with inertia gain. */
function flowRates(
  { network, forcing }: ClosedLoop,
  half: number,
  state: State,
  { pressures, collapse, rates }: Scratch,
): void {
  const { connections, branches } = network;
  const { svc, ivc, left, right } = branches;
  const junction = pressures[JUNCTION];
  const svcEnd = connections.svcInto === "junction" ? junction : pressures[RIGHT_ATRIUM];
  const ivcEnd =
    connections.ivcInto === "junction"
      ? junction
      : connections.ivcInto === "atrium"
        ? pressures[ATRIUM]
        : pressures[RIGHT_ATRIUM];
  // A waterfall at the diaphragm: below its closing pressure what lies beyond no longer matters.
  const closing = (forcing.abdominal[half % forcing.abdominal.length] ?? 0) + CLOSING;
  const ivcFoot = Math.max(ivcEnd, closing);
  rates[AORTA_FLOW] =
    (pressures[AORTA] - pressures[ARTERIES] - network.aortaResistance * state[AORTA_FLOW]) /
    network.aortaInertance;
  rates[SVC_FLOW] =
    (pressures[UPPER] - svcEnd - pathLoss(svc, state[SVC_FLOW], collapse[UPPER_COLLAPSE])) / svc.inertance;
  rates[IVC_FLOW] =
    (pressures[IVC] - ivcFoot - pathLoss(ivc, state[IVC_FLOW], collapse[IVC_COLLAPSE])) / ivc.inertance;
  rates[LEFT_FLOW] = (junction - pressures[LUNG_LEFT] - pathLoss(left, state[LEFT_FLOW], 1)) / left.inertance;
  rates[RIGHT_FLOW] =
    (junction - pressures[LUNG_RIGHT] - pathLoss(right, state[RIGHT_FLOW], 1)) / right.inertance;
}

const pathLoss = (path: Path, flow: number, collapse: number): number =>
  (path.a * collapse + path.b * Math.abs(flow)) * flow;
