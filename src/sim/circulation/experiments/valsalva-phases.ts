/** The phases of a Valsalva manoeuvre, beat by beat: what arterial pressure and stroke do while it is held, and after it is let go. */
import type { CirculationRequest } from "../../parameters/request.ts";
import { record } from "../answer/recording.ts";
import { VALSALVA_SECONDS } from "../equations/breathing.ts";
import { networkOf } from "../network/circuit-network.ts";
import { AORTA, SEMILUNAR_VALVE } from "../network/compartments.ts";
import { type Periodic, passThrough } from "../search/periodic.ts";
import { restingState } from "../solve.ts";

/** All over their own value at rest (dimensionless). */
export interface ValsalvaPhases {
  /** lowest arterial mean and stroke volume of any beat while it is held */
  readonly lowest: number;
  readonly lowestStroke: number;
  /** arterial mean as it is let go */
  readonly last: number;
  /** highest arterial mean of any beat after it: the overshoot of a normal answer */
  readonly overshoot: number;
}

/** s after letting go in which the overshoot comes, with the breath held at its usual depth. */
const AFTER = 15;

/** Beat by beat from rest, with the reflexes at their own pace. Undefined where the person has no state at rest, or the steps are too coarse. */
export function valsalvaPhases(request: CirculationRequest): ValsalvaPhases | undefined {
  const { found, law, adapted } = restingState(request);
  if (found.reason) return undefined;
  const { aorta, stroke } = beatOf(found);
  let { point, heartPeriod } = found;
  const beats = (breathing: "valsalva" | "held", seconds: number) => {
    const acting = { ...request, set: { ...request.set, breathing } };
    const run = { request: acting, network: networkOf(acting, law), fineness: 1, adapted };
    const passed: Beat[] = [];
    for (let elapsed = 0; elapsed < seconds; ) {
      elapsed += heartPeriod;
      const beat = passThrough(run, point, heartPeriod);
      if (beat.reason) return undefined;
      ({ point, heartPeriod } = beat);
      passed.push(beatOf(beat));
    }
    return passed;
  };
  const held = beats("valsalva", VALSALVA_SECONDS);
  const after = held && beats("held", AFTER);
  if (!after) return undefined;
  return {
    lowest: Math.min(...held.map((beat) => beat.aorta)) / aorta,
    lowestStroke: Math.min(...held.map((beat) => beat.stroke)) / stroke,
    last: (held.at(-1)?.aorta ?? aorta) / aorta,
    overshoot: Math.max(...after.map((beat) => beat.aorta)) / aorta,
  };
}

/** Pa, m3 */
interface Beat {
  readonly aorta: number;
  readonly stroke: number;
}

function beatOf(state: Periodic): Beat {
  const { pressures, flows } = record(state);
  return { aorta: pressures[AORTA], stroke: flows[SEMILUNAR_VALVE] * state.heartPeriod };
}
