/** From text to text, as `npm run -s compute` answers: what goes to standard output, what to standard error, the exit code. */
import { isRecord, oneOf, shown } from "../circulation/check-request.ts";
import { describeFault, type Fault } from "../faults.ts";
import { currentIds } from "../parameters/aliases.ts";
import { csvOf, tableOf } from "./answer-csv.ts";
import { findKind, KINDS } from "./kinds.ts";
import { requestSchema } from "./schema.ts";

export interface Computed {
  readonly output: string;
  /** one line each */
  readonly errors: readonly string[];
  /** 0 answered, 2 refused, 3 no answer found */
  readonly exit: 0 | 2 | 3;
}

export const schemaText = (): string => `${JSON.stringify(requestSchema(KINDS), null, 2)}\n`;

/** @param text one JSON request */
export async function compute(
  text: string,
  format: "json" | "csv",
  progress?: (done: number) => void,
): Promise<Computed> {
  let input: unknown;
  try {
    // A byte-order mark, as some editors write it, is no part of the request.
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
