/** Kind "circulation": the answer without what only a page needs (traces, state). */
import type { Circulation } from "../circulation/answer.ts";
import { checkRequest } from "../circulation/check-request.ts";
import { solve } from "../circulation/solve.ts";
import { findOutput } from "../parameters/outputs.ts";
import type { CirculationRequest } from "../parameters/request.ts";
import type { Kind } from "./kind.ts";
import { circulationSchema } from "./schema.ts";

/** What is printed of an answer. */
export function printed({
  pressures,
  flows,
  saturations,
  pathway,
  shares,
  energy,
  exchange,
  run,
  extras,
}: Circulation) {
  return { pressures, flows, saturations, pathway, shares, energy, exchange, run, extras };
}

const UNITS: readonly (readonly [pattern: RegExp, unit: string])[] = [
  [/(pressureDrop(\.[01])?|\.pressure|totalPressure)$/, "mmHg"],
  [/powerLoss(\.[01])?$/, "mW"],
  [/^shares\./, "1"],
  [/^energy\.(sources|losses)\./, "mW"],
  [/\.(share|station|reynolds|factor)$/, "1"],
  [/^run\.(beats|residual)$/, "1"],
  [/^run\.seconds$/, "s"],
];

export const circulationUnit = (path: string): string | undefined =>
  findOutput(path)?.unit ?? UNITS.find(([pattern]) => pattern.test(path))?.[1];

export const CIRCULATION_KIND: Kind<CirculationRequest> = {
  kind: "circulation",
  schema: circulationSchema(),
  check: (input) => checkRequest(input),
  run(request) {
    const answer = solve(request);
    return answer.run.converged ? { answer: printed(answer) } : { reason: answer.run.reason ?? "no answer" };
  },
  unitOf: circulationUnit,
};
