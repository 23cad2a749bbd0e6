/** Kind "circulation": the answer without what only a page needs (traces, state). */
import type { Circulation } from "../circulation/answer.ts";
import { checkRequest } from "../circulation/check-request.ts";
import { solve } from "../circulation/solve.ts";
import { findOutput } from "../parameters/outputs.ts";
import type { CirculationRequest } from "../parameters/request.ts";
import type { Kind } from "./kind.ts";
import { circulationSchema } from "./schema.ts";

/** The part of an answer that is printed. */
export function printed({
  pressures,
  flows,
  saturations,
  pathway,
  energy,
  exchange,
  run,
  extras,
}: Circulation) {
  return { pressures, flows, saturations, pathway, energy, exchange, run, extras };
}

const UNITS: readonly (readonly [pattern: RegExp, unit: string])[] = [
  [/(pressureDrop|\.pressure|totalPressure)$/, "mmHg"],
  [/powerLoss$/, "mW"],
  [/^energy\.(sources|losses)\./, "mW"],
  [/\.(share|station|reynolds)$/, "1"],
  [/^run\.(beats|residual)$/, "1"],
  [/^run\.seconds$/, "s"],
];

/** Unit of a number of the answer by its key path; undefined for words and flags. */
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
