/** Kind "sweep": one circulation, one or two quantities varied, some outputs. */

import { entryAt, present } from "../checked/present.ts";
import { checkRequest } from "../circulation/check-request.ts";
import {
  axisSpan,
  joinRows,
  rowCount,
  type SweepAnswer,
  type SweepAxis,
  type SweepRequest,
  type SweepRow,
  sweepRow,
} from "../circulation/experiments/parameter-sweep.ts";
import type { Fault } from "../faults.ts";
import { type Checked, numberWithin, oneOf, recordIn, refuseUnknownKeys, shown } from "../input-checks.ts";
import { OUTPUTS } from "../parameters/outputs.ts";
import { PARAMETERS } from "../parameters/parameters.ts";
import { BODY_RANGES } from "../parameters/request.ts";
import type { Kind, Table } from "./kind.ts";
import { circulationSchema, object } from "./schema.ts";
import { secondsNow } from "./stopwatch.ts";

const MAX_POINTS = 2500;
const MAX_ALONG = 200;
/** s of wall clock: a sweep of the most points takes some minutes. */
const WALL_SECONDS = { min: 0.001, max: 86_400, usual: 600, unit: "s" } as const;
const AXES = [
  ...PARAMETERS.filter(({ kind }) => kind === "number").map(({ name }) => name),
  ...Object.keys(BODY_RANGES).map((name) => `body.${name}`),
];
const PATHS = OUTPUTS.map(({ path }) => path);

export const SWEEP_KIND: Kind<SweepRequest> = {
  kind: "sweep",
  schema: object(
    {
      kind: { const: "sweep" },
      base: circulationSchema(),
      over: {
        type: "array",
        minItems: 1,
        maxItems: 2,
        description: "what varies: from, to and count, or values; in the parameter's own unit",
        items: object(
          {
            parameter: { enum: AXES },
            from: { type: "number", description: "in the parameter's unit" },
            to: { type: "number", description: "in the parameter's unit" },
            count: {
              type: "integer",
              minimum: 2,
              maximum: MAX_ALONG,
              description: "1: points, ends included",
            },
            values: { type: "array", items: { type: "number" }, minItems: 1, maxItems: MAX_ALONG },
          },
          ["parameter"],
        ),
      },
      outputs: { type: "array", minItems: 1, items: { enum: PATHS } },
      maxSeconds: {
        type: "number",
        minimum: WALL_SECONDS.min,
        maximum: WALL_SECONDS.max,
        default: WALL_SECONDS.usual,
        description: "s of wall clock; points not reached by then stand as null and among the failures",
      },
    },
    ["kind", "base", "over", "outputs"],
    `at most ${MAX_POINTS} points in all`,
  ),
  check: checkSweep,
  run(request, progress) {
    const count = rowCount(request);
    const points = count * entryAt(request.over, 0).values.length;
    const limit = request.maxSeconds ?? WALL_SECONDS.usual;
    const began = secondsNow();
    let asked = 0;
    const skip = () => {
      progress?.(asked++ / points);
      return secondsNow() - began > limit ? `not reached within maxSeconds, ${limit} s` : undefined;
    };
    const rows: SweepRow[] = [];
    for (let row = 0; row < count; row++) rows.push(sweepRow(request, row, skip));
    progress?.(1);
    const answer = joinRows(request, rows);
    return answer.failures.length === points
      ? { reason: `no point has an answer; the first: ${entryAt(answer.failures, 0).reason}` }
      : { answer };
  },
  table: (answer) => sweepTable(answer as SweepAnswer),
};

/** One line a point. */
function sweepTable({ axes, outputs }: SweepAnswer): Table {
  const [first, second] = axes;
  const columns = [...axes.map(({ parameter, unit }) => `${parameter} (${unit})`)];
  columns.push(...outputs.map(({ path, unit }) => `${path} (${unit})`));
  const rows = (second?.values ?? [undefined]).flatMap((across, row) =>
    present(first).values.map((value, i) => [
      value,
      ...(across === undefined ? [] : [across]),
      ...outputs.map(({ values }) => present(entryAt(values, row)[i])),
    ]),
  );
  return { columns, rows };
}

function checkSweep(input: Record<string, unknown>): Checked<SweepRequest> {
  const faults: Fault[] = [];
  refuseUnknownKeys(input, ["kind", "base", "over", "outputs", "maxSeconds"], "", faults);
  const base = checkRequest(input.base, "base.");
  if ("faults" in base) faults.push(...base.faults);
  const over = checkAxes(input.over, faults);
  const outputs = checkOutputs(input.outputs, faults);
  const { maxSeconds = WALL_SECONDS.usual } = input;
  numberWithin(maxSeconds, WALL_SECONDS, "maxSeconds", faults);
  const points = over.reduce((product, { values }) => product * values.length, 1);
  if (points > MAX_POINTS)
    faults.push({ path: "over", found: `${points} points`, allowed: `at most ${MAX_POINTS}` });
  if (faults.length > 0 || "faults" in base) return { faults };
  return { request: { kind: "sweep", base: base.request, over, outputs, maxSeconds: maxSeconds as number } };
}

function checkAxes(input: unknown, faults: Fault[]): SweepAxis[] {
  if (!Array.isArray(input) || input.length < 1 || input.length > 2) {
    faults.push({ path: "over", found: shown(input), allowed: "an array of one or two axes" });
    return [];
  }
  return input.flatMap((found: unknown, i) => {
    const path = `over[${i}]`;
    const axis = recordIn(found, path, faults, "an object with parameter and from, to, count or values");
    if (!axis) return [];
    refuseUnknownKeys(axis, ["parameter", "from", "to", "count", "values"], `${path}.`, faults);
    const parameter = oneOf(axis.parameter, AXES, `${path}.parameter`, faults);
    if (!parameter) return [];
    return [{ parameter, values: axisValues(axis, parameter, path, faults) }];
  });
}

function axisValues(
  axis: Record<string, unknown>,
  parameter: string,
  path: string,
  faults: Fault[],
): number[] {
  const span = present(axisSpan(parameter));
  if (axis.values !== undefined) {
    if (!Array.isArray(axis.values) || axis.values.length < 1 || axis.values.length > MAX_ALONG) {
      faults.push({
        path: `${path}.values`,
        found: shown(axis.values),
        allowed: `an array of 1 to ${MAX_ALONG} numbers`,
      });
      return [];
    }
    axis.values.forEach((value, i) => {
      numberWithin(value, span, `${path}.values[${i}]`, faults);
    });
    return axis.values as number[];
  }
  const before = faults.length;
  numberWithin(axis.from, span, `${path}.from`, faults);
  numberWithin(axis.to, span, `${path}.to`, faults);
  numberWithin(axis.count, { min: 2, max: MAX_ALONG, unit: "points" }, `${path}.count`, faults);
  if (faults.length === before && !Number.isInteger(axis.count))
    faults.push({ path: `${path}.count`, found: shown(axis.count), allowed: "a whole number" });
  if (faults.length > before) return [];
  const { from, to, count } = axis as { from: number; to: number; count: number };
  return Array.from({ length: count }, (_, i) => from + ((to - from) * i) / (count - 1));
}

function checkOutputs(input: unknown, faults: Fault[]): string[] {
  if (!Array.isArray(input) || input.length === 0) {
    faults.push({ path: "outputs", found: shown(input), allowed: "an array of output paths" });
    return [];
  }
  return input.flatMap((path: unknown, i) => oneOf(path, PATHS, `outputs[${i}]`, faults) ?? []);
}
