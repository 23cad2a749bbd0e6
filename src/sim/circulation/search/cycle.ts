/** One cycle of the circulation, a whole breath of whole beats: what runs it, what regulates it, and how far two states are apart. */
import { numberSetting } from "../../parameters/parameters.ts";
import type { CirculationRequest } from "../../parameters/request.ts";
import { fromMillilitre, fromMmHg } from "../../units.ts";
import { type Forcing, forcingOf } from "../equations/forcing.ts";
import { type Stepper, stepperOf } from "../equations/integrate.ts";
import type { Network } from "../network/circuit-network.ts";
import type { Point, State, Vector } from "../network/compartments.ts";
import * as compartment from "../network/compartments.ts";
import { exertion } from "../regulation/exercise.ts";
import { bedsFollowOxygen } from "../regulation/oxygen-of.ts";
import { reflexOf } from "../regulation/reflex.ts";
import type { CycleMeans } from "../regulation/volume-rule.ts";

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

/** mmHg that a mL/s counts as, of the flows that the pathway's law is taken at. */
const LAW_FLOW_WEIGHT = 0.02;

/** Whose circulation is run, and how. */
export interface Run {
  readonly request: CirculationRequest;
  readonly network: Network;
  /** ratio of the usual time step to the one taken, a whole number */
  readonly fineness: number;
  /** Pa, see {@link reflexOf} */
  readonly adapted: number | undefined;
}

/** Places of what is summed over a cycle beside the flows: Pa, m3/s. */
const ATRIUM_SUM = 0;
const AORTA_SUM = 1;
const FORWARD_SUM = 2;
const BACKWARD_SUM = 3;

/** Sets the factors of the next cycle by the means of this one. */
type Regulation = (point: Point, means: CycleMeans, seconds?: number) => void;

/** What runs one cycle after another. */
interface Engine {
  readonly forcing: Forcing;
  readonly stepper: Stepper;
  readonly regulate: Regulation;
  /** 1/min, before the reflex acts */
  readonly baseRate: number;
}

/** What a run needs for its cycles. */
export function engineOf({ request, network, fineness, adapted }: Run): Engine {
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
export function cycle(
  point: Point,
  { forcing, stepper, regulate, baseRate }: Engine,
  seconds?: number,
): CycleMeans {
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

/** Turns each component of a point (SI) into mmHg, or what weighs as much. */
export function scaleOf(network: Network): Float64Array {
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

/** mmHg, the greatest difference of two points, weighed by `scale`; not finite where one of them is not. */
export function distance(point: Point, image: Point, scale: Float64Array): number {
  let greatest = 0;
  for (const [i, weight] of scale.entries()) {
    const away = Math.abs((image[i] ?? 0) - (point[i] ?? 0)) * weight;
    if (!Number.isFinite(away)) return away;
    greatest = Math.max(greatest, away);
  }
  return greatest;
}
