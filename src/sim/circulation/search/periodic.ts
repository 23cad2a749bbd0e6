/** The search for the state that returns to itself after one cycle (a whole breath of whole beats). */
import type { FlowSplit } from "../../hydraulics/loss-law/features.ts";
import { restingSplit } from "../../hydraulics/pathway-network.ts";
import { fromMillilitre, fromMmHg } from "../../units.ts";
import type { Forcing } from "../equations/forcing.ts";
import type { Stepper } from "../equations/integrate.ts";
import type { Network } from "../network/circuit-network.ts";
import { type Point, RATE, STATES, VOLUMES } from "../network/compartments.ts";
import { give, totalVolume, type VolumeControl, volumeReason } from "../regulation/volume-rule.ts";
import { acceleratorOf, type Secant } from "./anderson.ts";
import { cycle, distance, engineOf, type Run, scaleOf } from "./cycle.ts";
import { fits, lawFlowsOf, plausible, takeLawFlows, usualPoint } from "./start-point.ts";
import type { WarmStart } from "./warm-start.ts";

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
/** mmHg, the residual where no cycle could be run. */
const UNKNOWN = 1000;
const MAX_CYCLES = 120;
/** Weight of a mL/s where one cycle foretells the next: a flow forgets within a beat what it was at the cycle's begin. */
const FLOW_WEIGHT = 1e-3;
export const TOO_FAST = "the flows of these settings change faster than the steps can follow";
/** mmHg: giving volume in search of an output ends here; across its wall no atrium stands higher for long, since the lungs would fill with water. */
export const HIGHEST_ATRIUM = 45;

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
