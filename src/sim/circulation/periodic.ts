/** The search for the state that returns to itself after one cycle (a whole breath of whole beats). */
import { BRANCHES } from "../hydraulics/law.ts";
import type { FlowSplit } from "../hydraulics/loss-law/features.ts";
import { numberSetting } from "../parameters/parameters.ts";
import type { CirculationRequest } from "../parameters/request.ts";
import { fromLitresPerMinute, fromMillilitre, fromMmHg } from "../units.ts";
import { acceleratorOf, type Secant } from "./anderson.ts";
import type { Network } from "./circuit-network.ts";
import * as compartment from "./compartments.ts";
import { exertion } from "./exercise.ts";
import { type Forcing, forcingOf } from "./forcing.ts";
import { type Stepper, stepperOf } from "./integrate.ts";
import { type Reflex, reflexOf } from "./reflex.ts";
import {
  type CycleMeans,
  give,
  meanFilling,
  totalVolume,
  type VolumeControl,
  volumeReason,
} from "./volume-rule.ts";
import { SEARCHED, type WarmStart } from "./warm-start.ts";

// Own copies, as in equations.ts.
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
  STATES,
  SVC_FLOW,
  UPPER,
  VENTRICLE,
  VOLUMES,
} = compartment;

const RATE = STATES;
const RESISTANCE = STATES + 1;

export interface Periodic {
  readonly network: Network;
  readonly forcing: Forcing;
  readonly stepper: Stepper;
  /** [SEARCHED] */
  readonly point: Float64Array;
  /** how the map changes about the point */
  readonly secants: readonly Secant[];
  /** s */
  readonly heartPeriod: number;
  readonly cycles: number;
  /** False for a state that is passed through, not returned to (a Valsalva manoeuvre). */
  readonly returns: boolean;
  /** mmHg, the greatest pressure by which the last cycle failed to return */
  readonly residual: number;
  readonly reason?: string;
}

/** mmHg: the state has returned when no compartment's pressure (flows: weighed alike) differs by more. */
const TOLERANCE = 2e-4;
/** The pathway's coefficients depend on its mean flows: they are renewed after each of the first repeats until the residual (mmHg) is small. */
const MAX_RENEWED = 12;
const RENEWED_UNTIL = 0.01;
/** mmHg, the residual where no repeat could be run. */
const UNKNOWN = 1000;
const MAX_CYCLES = 120;
export const TOO_FAST = "the flows of these settings change faster than the steps can follow";
/** Pa: giving volume in search of an output ends here; and no filling beyond the other is ever tried. */
const HIGHEST_ATRIUM = fromMmHg(45);
const HIGHEST_TRIED = fromMmHg(80);

export function findPeriodic(
  request: CirculationRequest,
  network: Network,
  control: VolumeControl,
  start: WarmStart | undefined,
  fineness: number,
  renew?: (flows: FlowSplit) => void,
): Periodic {
  const baseRate = numberSetting(request, "heartRate") * exertion(request).heartRate;
  const forcing = forcingOf(request, network, baseRate, fineness);
  const stepper = stepperOf(network, forcing);
  const reflex = reflexOf(request);
  const scale = scaleOf(network);
  const refused = control.fixed ? volumeReason(control.volume, network) : undefined;
  const near = start && !refused && fits(start.point, network, control) ? start : undefined;
  const accelerator = acceleratorOf(scale, near?.secants ?? []);
  let point = near?.point.slice() ?? usualPoint(network, request.body.bsa);
  if (!refused && (control.fixed || !near)) give(point, network, control.volume - totalVolume(point));
  let good = point;
  let image = point;
  let residual = UNKNOWN;
  let smallest = Number.POSITIVE_INFINITY;
  let cycles = 0;
  let before = 0;
  let reason: string | undefined = refused ?? "no periodic state within the allowed number of breaths";
  while (cycles < MAX_CYCLES && !refused) {
    image = point.slice();
    const means = cycle(image, forcing, stepper, baseRate, reflex);
    cycles++;
    const given = control.give(means);
    give(image, network, given);
    residual = distance(point, image, scale);

    if (!Number.isFinite(residual)) {
      residual = UNKNOWN;
      point = good.slice();
      reason = TOO_FAST;
      break;
    }
    good = point;
    if (renew && cycles <= MAX_RENEWED && residual > RENEWED_UNTIL) renew(means.branches);
    if (residual < TOLERANCE) {
      reason = undefined;
      break;
    }
    if (means.atrium > HIGHEST_ATRIUM && given > 0) {
      reason = "no blood volume reaches what is to be held: the atrium would pass 45 mmHg";
      break;
    }
    if (residual > 3 * smallest) accelerator.forget();
    smallest = Math.min(smallest, residual);
    // Gifts cut short, one after the other, do not follow the shortfall: there is nothing to extrapolate.
    const next = control.cut(given) && given === before ? image : accelerator.next(point, image);
    before = given;
    point = plausible(next, network) ? next : image;
    if (point === image) accelerator.forget();
    // Secants of a search that gave volume would give it here too.
    if (control.fixed) give(point, network, control.volume - totalVolume(point));
  }
  const heartPeriod = 60 / (baseRate * point[RATE]!);
  return {
    network,
    forcing,
    stepper,
    point,
    secants: accelerator.secants(),
    heartPeriod,
    cycles,
    returns: true,
    residual,
    ...(reason ? { reason } : {}),
  };
}

/**
 * What becomes of a state after some seconds under the request, beat by beat, with the reflex answering: for what is not steady.
 * @param start [SEARCHED] the state when it begins
 */
export function passThrough(
  request: CirculationRequest,
  network: Network,
  start: Float64Array,
  seconds: number,
  fineness: number,
): Periodic {
  const baseRate = numberSetting(request, "heartRate") * exertion(request).heartRate;
  const forcing = forcingOf(request, network, baseRate, fineness);
  const stepper = stepperOf(network, forcing);
  const reflex = reflexOf(request);
  const scale = scaleOf(network);
  const point = start.slice();
  let residual = 0;
  let cycles = 0;
  let elapsed = 0;
  while (elapsed < seconds) {
    const before = point.slice();
    elapsed += (60 / (baseRate * point[RATE]!)) * forcing.beats;
    cycle(point, forcing, stepper, baseRate, reflex);
    cycles++;
    residual = distance(before, point, scale);
  }
  const heartPeriod = 60 / (baseRate * point[RATE]!);
  return { network, forcing, stepper, point, secants: [], heartPeriod, cycles, returns: false, residual };
}

/** One cycle in place: state and reflex factors; answers the means that rules and reflex act on. */
function cycle(
  point: Float64Array,
  forcing: Forcing,
  stepper: Stepper,
  baseRate: number,
  reflex: Reflex,
): CycleMeans {
  const stepSize = 60 / (baseRate * point[RATE]!) / forcing.steps;
  const { pressures, flows } = stepper.scratch;
  let atrium = 0;
  let aorta = 0;
  let systemic = 0;
  const branches = { ivc: 0, svc: 0, left: 0, right: 0 };
  stepper.advance(point, stepSize, point[RESISTANCE]!, () => {
    atrium += pressures[ATRIUM]!;
    aorta += pressures[AORTA]!;
    systemic += flows[2]! + flows[3]! + flows[4]! + flows[5]!;
    branches.svc += point[SVC_FLOW]!;
    branches.ivc += point[IVC_FLOW]!;
    branches.left += point[LEFT_FLOW]!;
    branches.right += point[RIGHT_FLOW]!;
  });
  const steps = forcing.steps * forcing.beats;
  for (const name of BRANCHES) branches[name] /= steps;
  const means = { atrium: atrium / steps, aorta: aorta / steps, systemic: systemic / steps, branches };
  point[RATE] = reflex.heartRate(means.aorta);
  point[RESISTANCE] = reflex.resistance(means.aorta);
  return means;
}

/** Turns each component into mmHg, or what weighs as much. */
function scaleOf(network: Network): Float64Array {
  const scale = new Float64Array(SEARCHED);
  const perMmHg = 1 / fromMmHg(1);
  for (let i = 0; i < VOLUMES; i++)
    scale[i] =
      network.compliance[i]! > 0 ? perMmHg / network.compliance[i]! : perMmHg * network.atriumRelaxed;
  for (let i = VOLUMES; i < STATES; i++) scale[i] = 0.1 / fromMillilitre(1);
  scale[RATE] = 20;
  scale[RESISTANCE] = 20;
  return scale;
}

function distance(point: Float64Array, image: Float64Array, scale: Float64Array): number {
  let greatest = 0;
  for (let i = 0; i < point.length; i++) {
    const away = Math.abs(image[i]! - point[i]!) * scale[i]!;
    if (!Number.isFinite(away)) return away;
    greatest = Math.max(greatest, away);
  }
  return greatest;
}

/** Whether a point is worth trying: no vessel all but empty, not blood enough to burst. */
function plausible(point: Float64Array, network: Network): boolean {
  if (meanFilling(totalVolume(point), network) > HIGHEST_TRIED) return false;
  for (let i = 0; i < VOLUMES; i++) {
    const empty =
      network.unstressed[i]! > 0 && network.compliance[i]! > 0 ? 0.05 * network.unstressed[i]! : -1e-5;
    if (!(point[i]! > empty)) return false;
  }
  return point[RATE]! > 0.5 && point[RATE]! < 2 && point[RESISTANCE]! > 0.5 && point[RESISTANCE]! < 2;
}

/** Whether a start belongs to this kind of heart and this size of body. */
const fits = (start: Float64Array, network: Network, control: VolumeControl): boolean =>
  start[RIGHT_VENTRICLE]! > 0 === network.connections.rightHeart &&
  Math.abs(totalVolume(start) / control.volume - 1) < NEAR;

/** A start whose blood volume differs by a larger part belongs to another body. */
const NEAR = 0.3;

/** mmHg in each vessel to begin a cold search from. */
const USUAL: Readonly<Record<number, number>> = {
  [AORTA]: 60,
  [ARTERIES]: 70,
  [UPPER]: 12,
  [SPLANCHNIC]: 13,
  [LEGS]: 13,
  [IVC]: 12,
  [JUNCTION]: 12,
  [LUNG_LEFT]: 12,
  [LUNG_RIGHT]: 12,
  [PULMONARY_VEINS]: 8,
};

function usualPoint(network: Network, bsa: number): Float64Array {
  const point = new Float64Array(SEARCHED);
  for (const [index, pressure] of Object.entries(USUAL)) {
    const i = Number(index);
    point[i] = network.unstressed[i]! + network.compliance[i]! * fromMmHg(pressure);
  }
  point[ATRIUM] = network.unstressed[ATRIUM]! + fromMmHg(7) / network.atriumRelaxed;
  point[VENTRICLE] = network.unstressed[VENTRICLE]! + fromMillilitre(60 * bsa);
  if (network.connections.rightHeart) {
    point[RIGHT_ATRIUM] = network.unstressed[RIGHT_ATRIUM]! + fromMmHg(4) / network.atriumRelaxed;
    point[RIGHT_VENTRICLE] = network.unstressed[RIGHT_VENTRICLE]! + fromMillilitre(60 * bsa);
  }
  // The aorta flows at a usual index; the pathway starts from rest, since a usual flow through a tight narrowing would be absurd.
  point[AORTA_FLOW] = fromLitresPerMinute(3 * bsa);
  point[RATE] = 1;
  point[RESISTANCE] = 1;
  return point;
}
