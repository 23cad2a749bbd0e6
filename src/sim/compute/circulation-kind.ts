/** Kind "circulation": the answer without what only a page needs (traces, state). */
import type { Circulation } from "../circulation/answer/answer.ts";
import { checkRequest } from "../circulation/check-request.ts";
import { solve } from "../circulation/solve.ts";
import { findOutput } from "../parameters/outputs.ts";
import type { CirculationRequest } from "../parameters/request.ts";
import { type TraceName, takeTraces, tracesAsked, traceTable, withTraces } from "./asked-traces.ts";
import type { Kind } from "./kind.ts";
import { presetSchema, withPreset } from "./preset.ts";
import { circulationSchema } from "./schema.ts";

/** The part of an answer that is printed. */
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

/** Unit of a number of the answer by its key path; undefined for words and flags. */
export const circulationUnit = (path: string): string | undefined =>
  findOutput(path)?.unit ?? UNITS.find(([pattern]) => pattern.test(path))?.[1];

interface CirculationQuestion {
  readonly request: CirculationRequest;
  /** names of the curves that are asked for beside the numbers */
  readonly traces: readonly TraceName[];
}

export const CIRCULATION_KIND: Kind<CirculationQuestion> = {
  kind: "circulation",
  schema: withTraces(presetSchema(circulationSchema())),
  check(input) {
    const { traces, rest, faults: unknown } = takeTraces(input);
    const { rest: expanded, faults: nobody } = withPreset(rest);
    const faults = [...nobody, ...unknown];
    const checked = checkRequest(expanded);
    if ("faults" in checked) return { faults: [...checked.faults, ...faults] };
    return faults.length > 0 ? { faults } : { request: { request: checked.request, traces } };
  },
  run({ request, traces }) {
    const answer = solve(request);
    if (!answer.run.converged) return { reason: answer.run.reason ?? "no answer" };
    const reported = printed(answer);
    return { answer: traces.length > 0 ? { ...reported, traces: tracesAsked(answer, traces) } : reported };
  },
  table: (answer) => traceTable(answer),
  unitOf: circulationUnit,
};
