/** Exercise in words: the ends of the first curve, and the reference's end. */
import type { Frame } from "../../chain/frame.ts";
import type { Circulation } from "../../sim/circulation/answer.ts";
import type { Reading } from "../circuit/circuit-reading.ts";
import { sweepEnds } from "../drawing/sweep-ends.ts";

/** mmHg in the veins whose blood goes to the lungs: before completion only the upper ones. */
export const veinsToLungs = ({ request, pressures }: Circulation): number =>
  request.stage === "glenn" ? pressures.svc : pressures.ivc;

/** States at the end of a curve over which it may level off, and the part of its usual rise that is left there at most. */
const END = 3;
const LEVEL = 0.3;

/** Whether the veins' pressure hardly rises any more while the atrium's falls. */
export function levelsOff(states: readonly Circulation[]): boolean {
  const [first, from, to] = [states[0], states.at(-END), states.at(-1)];
  if (!first || !from || !to || states.length < 2 * END) return false;
  const usual = ((veinsToLungs(to) - veinsToLungs(first)) * (END - 1)) / (states.length - 1);
  const rise = veinsToLungs(to) - veinsToLungs(from);
  return to.pressures.atrium < from.pressures.atrium && rise < LEVEL * usual;
}

/** Message key and arguments (MET, mmHg, L/min); null until the curve's ends are answered. */
export function readExercise({ sweep }: Frame): Reading | null {
  if (sweep?.over !== "metabolicEquivalents") return null;
  const ends = sweepEnds(sweep);
  if (!ends) return null;
  const { first, last, early } = ends;
  const reference = sweep.curves.find(({ name }) => name === "reference")?.points.at(-1)?.circulation;
  return {
    key: "further.reading.exercise",
    args: {
      from: first.at,
      to: last.at,
      early: early ? "yes" : "no",
      pathwayFrom: veinsToLungs(first.circulation),
      pathwayTo: veinsToLungs(last.circulation),
      outputFrom: first.circulation.flows.systemic,
      outputTo: last.circulation.flows.systemic,
      reference: reference ? "yes" : "no",
      referenceTo: reference?.flows.systemic ?? 0,
    },
  };
}
