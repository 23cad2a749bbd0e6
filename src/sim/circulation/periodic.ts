/** The search for the state that returns to itself after one cycle (a whole breath of whole beats). Long because search and passage share the cycle. */
import type { FlowSplit } from "../hydraulics/loss-law/features.ts";
import { restingSplit } from "../hydraulics/pathway-network.ts";
import { numberSetting } from "../parameters/parameters.ts";
import type { CirculationRequest } from "../parameters/request.ts";
import { fromMillilitre, fromMmHg } from "../units.ts";
import { acceleratorOf, type Secant } from "./anderson.ts";
import type { Network } from "./circuit-network.ts";
import type { Point, State, Vector } from "./compartments.ts";
import * as compartment from "./compartments.ts";
import { exertion } from "./exercise.ts";
import { type Forcing, forcingOf } from "./forcing.ts";
import { type Stepper, stepperOf } from "./integrate.ts";
import { bedsFollowOxygen } from "./oxygen-of.ts";
import { reflexOf } from "./reflex.ts";
import { fits, lawFlowsOf, plausible, takeLawFlows, usualPoint } from "./start-point.ts";
import { type CycleMeans, give, totalVolume, type VolumeControl, volumeReason } from "./volume-rule.ts";
import type { WarmStart } from "./warm-start.ts";

// Own copies, as in equations.ts.
const {
  AORTA,
  ATRIUM,
  CORONARY,
  CORONARY_FLOW,
  FENESTRATION,
  IVC_FLOW,
  LAW_FLOWS,
  LEFT_FLOW,
  LEG_BED,
  RATE,
  SEARCHED,
  RIGHT_FLOW,
  SPLANCHNIC_BED,
  STATES,
  SVC_FLOW,
  UPPER_BED,
  VOLUMES,
} = compartment;

/** A state that was found, and what it was found with. */
export interface Periodic {
  readonly network: Network;
  readonly forcing: Forcing;
  readonly stepper: Stepper;
  readonly point: Point;
  /** how the map changes about the point */
  readonly secants: readonly Secant[];
  /** s */
  readonly heartPeriod: number;
  /** number of cycles that were run */
  readonly cycles: number;
  /** False for a state that is passed through, not returned to (a Valsalva manoeuvre). */
  readonly returns: boolean;
  /** mmHg, the greatest pressure by which the last cycle failed to return */
  readonly residual: number;
  readonly reason?: string;
}

/** mmHg: the state has returned when no compartment's pressure (flows: weighed alike) differs by more. */
const TOLERANCE = 2e-4;
/** The pathway's coefficients follow the searched flows in so many repeats; a law that would jump to and fro then stays. */
const MAX_RENEWED = 40;
/** mmHg, the residual where no repeat could be run. */
const UNKNOWN = 1000;
const MAX_CYCLES = 120;
/** Weight of a mL/s where one cycle foretells the next: a flow forgets within a beat what it was at the cycle's begin. */
const FLOW_WEIGHT = 1e-3;
/** mmHg that a mL/s counts as, of the flows that the pathway's law is taken at. */
const LAW_FLOW_WEIGHT = 0.02;
export const TOO_FAST = "the flows of these settings change faster than the steps can follow";
/** mmHg: giving volume in search of an output ends here; across its wall no atrium stands higher for long, since the lungs would fill with water. */
export const HIGHEST_ATRIUM = 45;

/** Whose circulation is run, and how. */
export interface Run {
  readonly request: CirculationRequest;
  readonly network: Network;
  /** ratio of the usual time step to the one taken, a whole number */
  readonly fineness: number;
  /** Pa, see {@link reflexOf} */
  readonly adapted: number | undefined;
}

/**
 * Searches the periodic state; where none is found, `reason` says why and the last state is answered. Never throws.
 * @param start a state to begin from; one that does not fit is left aside
 * @param renew called before each of the first cycles with the flows (m3/s) of the point, to renew what depends on them
 */
export function findPeriodic(
  run: Run,
  control: VolumeControl,
  start?: WarmStart,
  renew?: (flows: FlowSplit) => void,
): Periodic {
  const { request, network } = run;
  const engine = engineOf(run);
  const { forcing, stepper, baseRate } = engine;
  const scale = scaleOf(network);
  const weight = scale.slice();
  weight.fill(FLOW_WEIGHT / fromMillilitre(1), VOLUMES, STATES);
  const refused = control.fixed ? volumeReason(control.volume, network) : undefined;
  const near = start && !refused && fits(start.point, network, control) ? start : undefined;
  const accelerator = acceleratorOf(weight, near?.secants ?? []);
  let point =
    (near?.point.slice() as Point | undefined) ??
    usualPoint(network, request.body.bsa, restingSplit(request));
  if (!refused && (control.fixed || !near)) give(point, network, control.volume - totalVolume(point));
  let good = point;
  let image = point;
  let residual = UNKNOWN;
  let smallest = Number.POSITIVE_INFINITY;
  let cycles = 0;
  let before = 0;
  let reason: string | undefined = refused ?? "no periodic state within the allowed number of breaths";
  while (cycles < MAX_CYCLES && !refused) {
    const renewed = cycles < MAX_RENEWED ? renew : undefined;
    renewed?.(lawFlowsOf(point));
    image = point.slice() as Point;
    const means = cycle(image, engine);
    if (renewed) takeLawFlows(image, means.branches);
    cycles++;
    const given = control.give(means);
    give(image, network, given);
    residual = distance(point, image, scale);

    if (!Number.isFinite(residual)) {
      residual = UNKNOWN;
      point = good.slice() as Point;
      reason = TOO_FAST;
      break;
    }
    good = point;
    if (residual < TOLERANCE) {
      reason = undefined;
      break;
    }
    if (means.atrium > fromMmHg(HIGHEST_ATRIUM) && given > 0) {
      reason = `no blood volume reaches what is to be held: the atrium would pass ${HIGHEST_ATRIUM} mmHg`;
      break;
    }
    if (residual > 3 * smallest) {
      accelerator.forget();
      smallest = residual;
    }
    smallest = Math.min(smallest, residual);
    // Gifts cut short, one after the other, do not follow the shortfall: there is nothing to extrapolate.
    const next = control.cut(given) && given === before ? image : (accelerator.next(point, image) as Point);
    before = given;
    point = plausible(next, network) ? next : image;
    if (point === image) accelerator.forget();
    // Secants of a search that gave volume would give it here too.
    if (control.fixed) give(point, network, control.volume - totalVolume(point));
  }
  forcing.beatAt(point[RATE]);
  const heartPeriod = 60 / (baseRate * point[RATE]);
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
 * @param start the state when it begins
 * @param seconds s, run on to the end of the cycle in which they pass
 */
export function passThrough(run: Run, start: Point, seconds: number): Periodic {
  const { network } = run;
  const engine = engineOf(run);
  const { forcing, stepper, baseRate } = engine;
  const scale = scaleOf(network);
  let point = start.slice() as Point;
  let residual = 0;
  let cycles = 0;
  let reason: string | undefined;
  for (let elapsed = 0; elapsed < seconds; cycles++) {
    const next = point.slice() as Point;
    const length = (60 / (baseRate * point[RATE])) * forcing.beats;
    elapsed += length;
    cycle(next, engine, length);
    residual = distance(point, next, scale);
    if (!Number.isFinite(residual)) {
      residual = UNKNOWN;
      reason = TOO_FAST;
      break;
    }
    point = next;
  }
  const heartPeriod = 60 / (baseRate * point[RATE]);
  return {
    network,
    forcing,
    stepper,
    point,
    secants: [],
    heartPeriod,
    cycles,
    returns: false,
    residual,
    ...(reason ? { reason } : {}),
  };
}

/** Places of what is summed over a cycle beside the flows: Pa, m3/s. */
const ATRIUM_SUM = 0;
const AORTA_SUM = 1;
const FORWARD_SUM = 2;
const BACKWARD_SUM = 3;

/** Sets the factors of the next repeat by the means of this one. */
type Regulation = (point: Point, means: CycleMeans, seconds?: number) => void;

/** What runs one cycle after another. */
interface Engine {
  readonly forcing: Forcing;
  readonly stepper: Stepper;
  readonly regulate: Regulation;
  /** 1/min, before the reflex acts */
  readonly baseRate: number;
}

function engineOf({ request, network, fineness, adapted }: Run): Engine {
  const baseRate = numberSetting(request, "heartRate") * exertion(request).heartRate;
  const forcing = forcingOf(request, network, baseRate, fineness);
  const stepper = stepperOf({ network, forcing });
  return { forcing, stepper, regulate: regulationOf(request, forcing, adapted), baseRate };
}

function regulationOf(
  request: CirculationRequest,
  forcing: Forcing,
  adapted: number | undefined,
): Regulation {
  const reflex = reflexOf(request, adapted);
  const beds = bedsFollowOxygen(request);
  return (point, means, seconds) => {
    reflex(point, { aorta: means.aorta, atrium: means.atrium - forcing.meanChest }, seconds);
    beds(point, means);
  };
}

/**
 * One cycle in place: state and what regulates it; answers the means that rules and reflex act on.
 * @param seconds that pass meanwhile, where a course is followed; left out in a search
 */
function cycle(point: Point, { forcing, stepper, regulate, baseRate }: Engine, seconds?: number): CycleMeans {
  const stepSize = 60 / (baseRate * point[RATE]) / forcing.steps;
  const { pressures, flows } = stepper.scratch;
  // Arrays, since a number that a closure counts up is allocated again each time.
  const sums: compartment.Flows = compartment.vector(flows.length);
  const inert: State = compartment.vector(STATES);
  const other: Vector<0 | 1 | 2 | 3> = compartment.vector(4);
  stepper.advance(point, stepSize, point, () => {
    for (let i = 0; i < sums.length; i++) sums[i] = (sums[i] ?? 0) + (flows[i] ?? 0);
    for (let i = SVC_FLOW; i < STATES; i++) inert[i] = (inert[i] ?? 0) + (point[i] ?? 0);
    other[ATRIUM_SUM] += pressures[ATRIUM];
    other[AORTA_SUM] += pressures[AORTA];
    other[FORWARD_SUM] += Math.max(0, flows[FENESTRATION]);
    other[BACKWARD_SUM] += Math.max(0, -flows[FENESTRATION]);
  });
  const steps = forcing.steps * forcing.beats;
  const flowMeans = sums.map((sum) => sum / steps) as compartment.Flows;
  const found: CycleMeans = {
    atrium: other[ATRIUM_SUM] / steps,
    aorta: other[AORTA_SUM] / steps,
    systemic: flowMeans[UPPER_BED] + flowMeans[SPLANCHNIC_BED] + flowMeans[LEG_BED] + flowMeans[CORONARY],
    branches: {
      svc: inert[SVC_FLOW] / steps,
      ivc: inert[IVC_FLOW] / steps,
      left: inert[LEFT_FLOW] / steps,
      right: inert[RIGHT_FLOW] / steps,
    },
    flows: flowMeans,
    fenestrationForward: other[FORWARD_SUM] / steps,
    fenestrationBackward: other[BACKWARD_SUM] / steps,
  };
  regulate(point, found, seconds);
  return found;
}

/** Turns each component into mmHg, or what weighs as much. */
function scaleOf(network: Network): Float64Array {
  const scale = new Float64Array(SEARCHED);
  const perMmHg = 1 / fromMmHg(1);
  network.compliance.forEach((compliance, i) => {
    scale[i] = compliance > 0 ? perMmHg / compliance : perMmHg * network.atriumRelaxed;
  });
  scale.fill(0.1 / fromMillilitre(1), VOLUMES, STATES);
  scale.fill(20, STATES, LAW_FLOWS);
  scale.fill(LAW_FLOW_WEIGHT / fromMillilitre(1), LAW_FLOWS);
  scale[CORONARY_FLOW] = 2;
  return scale;
}

function distance(point: Point, image: Point, scale: Float64Array): number {
  let greatest = 0;
  for (const [i, weight] of scale.entries()) {
    const away = Math.abs((image[i] ?? 0) - (point[i] ?? 0)) * weight;
    if (!Number.isFinite(away)) return away;
    greatest = Math.max(greatest, away);
  }
  return greatest;
}
