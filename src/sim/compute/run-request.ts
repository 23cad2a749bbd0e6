/** From text to text, as `npm run -s compute` does: standard output, standard error and exit code. */

import { describeFault, type Fault } from "../faults.ts";
import { isRecord, oneOf, shown } from "../input-checks.ts";
import { currentIds } from "../parameters/aliases.ts";
import { csvOf, tableOf } from "./answer-csv.ts";
import { findKind, KINDS } from "./kinds.ts";
import { requestSchema } from "./schema.ts";

/** What a command prints and returns. */
export interface Computed {
  readonly output: string;
  /** one line each */
  readonly errors: readonly string[];
  /** exit code, dimensionless: 0 answered, 2 refused, 3 no answer found */
  readonly exit: 0 | 2 | 3;
}

/** JSON Schema of all kinds, indented. */
export const schemaText = (): string => `${JSON.stringify(requestSchema(KINDS), null, 2)}\n`;

/**
 * Never throws for bad input: faults are in `errors`.
 * @param text one JSON request
 * @param progress fraction done, 0 to 1
 */
export async function compute(
  text: string,
  format: "json" | "csv",
  progress?: (done: number) => void,
): Promise<Computed> {
  let input: unknown;
  try {
    // Some editors write a byte-order mark; it is not part of the request.
    input = currentIds(JSON.parse(text.replace(/^\uFEFF/, "")));
  } catch (error) {
    return refused([{ path: "request", found: (error as Error).message, allowed: "one JSON object" }]);
  }
  if (!isRecord(input))
    return refused([{ path: "request", found: shown(input), allowed: "one JSON object" }]);
  const kind = findKind(input.kind);
  if (!kind) {
    const faults: Fault[] = [];
    oneOf(
      input.kind,
      KINDS.map((each) => each.kind),
      "kind",
      faults,
    );
    return refused(faults);
  }
  const checked = kind.check(input);
  if ("faults" in checked) return refused(checked.faults);
  const outcome = await kind.run(checked.request, progress);
  if ("reason" in outcome) return { output: "", errors: [outcome.reason], exit: 3 };
  const output =
    format === "csv" ? csvOf(tableOf(kind, outcome.answer)) : `${JSON.stringify(outcome.answer, null, 2)}\n`;
  return { output, errors: [], exit: 0 };
}

const refused = (faults: readonly Fault[]): Computed => ({
  output: "",
  errors: faults.map(describeFault),
  exit: 2,
});
