/** Exercise in words: the ends of the first curve, and the reference's end. */
import type { Frame } from "../../chain/frame.ts";
import type { Circulation } from "../../sim/circulation/answer.ts";
import type { Reading } from "../circuit/circuit-reading.ts";

/** mmHg in the veins whose blood goes to the lungs: before completion only the upper ones. */
export const veinsToLungs = ({ request, pressures }: Circulation): number =>
  request.stage === "glenn" ? pressures.svc : pressures.ivc;

/** Message key and arguments (MET, mmHg, L/min); null until both ends of the curve are answered. */
export function readExercise({ sweep }: Frame): Reading | null {
  if (sweep?.over !== "metabolicEquivalents") return null;
  const points = sweep.curves[0]?.points ?? [];
  const [first, last] = [points[0], points[points.length - 1]];
  if (!first?.circulation || !last?.circulation) return null;
  const reference = sweep.curves.find(({ name }) => name === "reference")?.points.at(-1)?.circulation;
  return {
    key: "further.reading.exercise",
    args: {
      from: first.at,
      to: last.at,
      pathwayFrom: veinsToLungs(first.circulation),
      pathwayTo: veinsToLungs(last.circulation),
      outputFrom: first.circulation.flows.systemic,
      outputTo: last.circulation.flows.systemic,
      reference: reference ? "yes" : "no",
      referenceTo: reference?.flows.systemic ?? 0,
    },
  };
}
