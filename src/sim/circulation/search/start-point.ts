/** Where a search begins, and which points are worth trying. */
import { BRANCHES } from "../../hydraulics/law.ts";
import type { FlowSplit } from "../../hydraulics/loss-law/features.ts";
import { fromLitresPerMinute, fromMillilitre, fromMmHg } from "../../units.ts";
import type { Network } from "../network/circuit-network.ts";
import {
  AORTA,
  AORTA_FLOW,
  ARTERIES,
  ATRIUM,
  CONTRACTILITY,
  CORONARY_FLOW,
  type Compartment,
  IVC,
  JUNCTION,
  LAW_FLOWS,
  LEGS,
  LUNG_LEFT,
  LUNG_RIGHT,
  type Point,
  PULMONARY_VEINS,
  RATE,
  RESISTANCE,
  RIGHT_ATRIUM,
  RIGHT_VENTRICLE,
  SEARCHED,
  SPLANCHNIC,
  STATES,
  UPPER,
  UPPER_FLOW,
  VENOUS_ROOM,
  VENTRICLE,
  vector,
} from "../network/compartments.ts";
import { meanFilling, totalVolume, type VolumeControl } from "../regulation/volume-rule.ts";

/** Pa: no filling beyond it is ever tried. */
const HIGHEST_TRIED = fromMmHg(80);

/** m3/s: no vein's mean flow is ever tried beyond it. */
const HIGHEST_FLOW = fromLitresPerMinute(60);

/** m3: a chamber may come out this much under nothing in a guess, since its wall pulls open. */
const MIN_CHAMBER = -1e-5;

/** Whether a point is worth trying: no vessel all but empty, not blood enough to burst, no factor beyond its bounds. */
export function plausible(point: Point, network: Network): boolean {
  if (meanFilling(totalVolume(point), network) > HIGHEST_TRIED) return false;
  const lawFlows = point.subarray(LAW_FLOWS);
  if (!lawFlows.every((flow) => Math.abs(flow) < HIGHEST_FLOW)) return false;
  const filled = network.unstressed.every((unstressed, i) => {
    const vessel = unstressed > 0 && (network.compliance[i] ?? 0) > 0;
    return (point[i] ?? 0) > (vessel ? 0.05 * unstressed : MIN_CHAMBER);
  });
  return filled && point.subarray(STATES, LAW_FLOWS).every((factor) => factor > 0.25 && factor < 10);
}

/** Whether a start belongs to this kind of heart and this size of body. */
export const fits = (start: Point, network: Network, control: VolumeControl): boolean =>
  start[RIGHT_VENTRICLE] > 0 === network.connections.rightHeart &&
  Math.abs(totalVolume(start) / control.volume - 1) < NEAR;

/** A start whose blood volume differs by a larger part belongs to another body. */
const NEAR = 0.3;

/** mmHg in each vessel to begin a cold search from. */
const USUAL: readonly (readonly [Compartment, number])[] = [
  [AORTA, 60],
  [ARTERIES, 70],
  [UPPER, 12],
  [SPLANCHNIC, 13],
  [LEGS, 13],
  [IVC, 12],
  [JUNCTION, 12],
  [LUNG_LEFT, 12],
  [LUNG_RIGHT, 12],
  [PULMONARY_VEINS, 8],
];

const FACTORS = [RATE, RESISTANCE, CONTRACTILITY, VENOUS_ROOM, CORONARY_FLOW, UPPER_FLOW] as const;

/** A usual state (m3, m3/s, factors 1) of a body with this surface (m2), its law taken at these flows (m3/s). */
export function usualPoint(network: Network, bsa: number, flows: FlowSplit): Point {
  const point: Point = vector(SEARCHED);
  for (const [i, pressure] of USUAL)
    point[i] = network.unstressed[i] + network.compliance[i] * fromMmHg(pressure);
  point[ATRIUM] = network.unstressed[ATRIUM] + fromMmHg(7) / network.atriumRelaxed;
  point[VENTRICLE] = network.unstressed[VENTRICLE] + fromMillilitre(60 * bsa);
  if (network.connections.rightHeart) {
    point[RIGHT_ATRIUM] = network.unstressed[RIGHT_ATRIUM] + fromMmHg(4) / network.atriumRelaxed;
    point[RIGHT_VENTRICLE] = network.unstressed[RIGHT_VENTRICLE] + fromMillilitre(60 * bsa);
  }
  // The aorta flows at a usual index; the pathway starts from rest, since a usual flow through a tight narrowing would be absurd.
  point[AORTA_FLOW] = fromLitresPerMinute(3 * bsa);
  for (const factor of FACTORS) point[factor] = 1;
  takeLawFlows(point, flows);
  return point;
}

/** The flows (m3/s) that a point's law is taken at. */
export const lawFlowsOf = (point: Point): FlowSplit =>
  Object.fromEntries(BRANCHES.map((name, i) => [name, point[LAW_FLOWS + i] ?? 0])) as unknown as FlowSplit;

/** Writes the flows (m3/s) that a point's law is taken at. */
export function takeLawFlows(point: Point, flows: FlowSplit): void {
  BRANCHES.forEach((name, i) => {
    point[LAW_FLOWS + i] = flows[name];
  });
}
