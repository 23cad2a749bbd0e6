/** Exercise in words: the ends of the first curve, and the reference's end. */
import type { Frame } from "../../chain/frame.ts";
import type { Circulation } from "../../sim/circulation/answer/answer.ts";
import type { Reading } from "../circuit/circuit-reading.ts";
import { sweepEnds } from "../drawing/sweep-ends.ts";

/** mmHg in the veins whose blood goes to the lungs: before completion only the upper ones. */
export const veinsToLungs = ({ request, pressures }: Circulation): number =>
  request.stage === "glenn" ? pressures.svc : pressures.ivc;

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
