/** Outputs against one or two quantities: pure, row by row, so that rows may run on several threads. */

import { entryAt } from "../../checked/present.ts";
import { findOutput, readOutput } from "../../parameters/outputs.ts";
import { findParameter } from "../../parameters/parameters.ts";
import { BODY_RANGES, type Body, type CirculationRequest } from "../../parameters/request.ts";
import { solve } from "../solve.ts";

/** What is varied. */
export interface SweepAxis {
  /** a number parameter's name, or "body.bsa", "body.ageYears", "body.haemoglobin" */
  readonly parameter: string;
  /** in the parameter's own unit */
  readonly values: readonly number[];
}

/** A checked request for a sweep. */
export interface SweepRequest {
  readonly kind: "sweep";
  readonly base: CirculationRequest;
  /** one, or two: the first runs along a row, the second from row to row */
  readonly over: readonly SweepAxis[];
  /** paths of outputs.ts */
  readonly outputs: readonly string[];
  /** s of wall clock after which the remaining points are left without an answer; no limit when left out */
  readonly maxSeconds?: number;
}

/** One row's answer. */
export interface SweepRow {
  /** in each output's unit: [outputs][values of the first axis]; null where nothing was found */
  readonly values: readonly (readonly (number | null)[])[];
  readonly failures: readonly SweepFailure[];
}

interface SweepFailure {
  /** value of each axis */
  readonly at: readonly number[];
  readonly reason: string;
}

/** All rows together. */
export interface SweepAnswer {
  readonly axes: readonly (SweepAxis & { readonly unit: string })[];
  /** values [rows][first axis] */
  readonly outputs: readonly {
    readonly path: string;
    readonly unit: string;
    readonly values: readonly (readonly (number | null)[])[];
  }[];
  readonly failures: readonly SweepFailure[];
}

/** Number of rows: of values of the second axis, 1 without one. */
export const rowCount = (request: SweepRequest): number => request.over[1]?.values.length ?? 1;

/** Why a point is to be left out, undefined to solve it; asked before each point. */
type Skip = () => string | undefined;

/**
 * One row; each point starts from its neighbour's state. Points without an answer are listed as failures, with the reason.
 * @param row index on the second axis; 0 without one
 */
export function sweepRow(request: SweepRequest, row: number, skip: Skip = () => undefined): SweepRow {
  const first = entryAt(request.over, 0);
  const second = request.over[1];
  const across = second ? [{ name: second.parameter, value: entryAt(second.values, row) }] : [];
  const failures: SweepFailure[] = [];
  const values = request.outputs.map((): (number | null)[] => []);
  let start: readonly number[] | undefined;
  for (const value of first.values) {
    const changes = [{ name: first.parameter, value }, ...across];
    const skipped = skip();
    if (skipped !== undefined) {
      failures.push({ at: changes.map((change) => change.value), reason: skipped });
      for (const each of values) each.push(null);
      continue;
    }
    const answer = solve(changed(request.base, changes), start ? { start } : {});
    if (answer.run.converged) start = answer.state;
    else failures.push({ at: changes.map((change) => change.value), reason: answer.run.reason ?? "" });
    request.outputs.forEach((path, i) => {
      entryAt(values, i).push(answer.run.converged ? (readOutput(answer, path) ?? null) : null);
    });
  }
  return { values, failures };
}

/** Rows, in their order, put together. */
export function joinRows(request: SweepRequest, rows: readonly SweepRow[]): SweepAnswer {
  return {
    axes: request.over.map((axis) => ({ ...axis, unit: unitOfAxis(axis.parameter) })),
    outputs: request.outputs.map((path, i) => ({
      path,
      unit: findOutput(path)?.unit ?? "",
      values: rows.map(({ values }) => entryAt(values, i)),
    })),
    failures: rows.flatMap(({ failures }) => failures),
  };
}

const BODY = "body.";

function changed(
  base: CirculationRequest,
  changes: readonly { readonly name: string; readonly value: number }[],
): CirculationRequest {
  let { body, set } = base;
  for (const { name, value } of changes) {
    if (name.startsWith(BODY)) body = { ...body, [name.slice(BODY.length)]: value };
    else set = { ...set, [name]: value };
  }
  return { ...base, body, set };
}

interface Span {
  readonly min: number;
  readonly max: number;
  readonly unit: string;
}

/** Range and unit of what an axis may run over, or undefined if it can't. */
export function axisSpan(parameter: string): Span | undefined {
  const part = parameter.slice(BODY.length);
  if (parameter.startsWith(BODY))
    return Object.hasOwn(BODY_RANGES, part) ? BODY_RANGES[part as keyof Body] : undefined;
  const found = findParameter(parameter);
  return found?.kind === "number" ? found : undefined;
}

const unitOfAxis = (parameter: string): string => axisSpan(parameter)?.unit ?? "";
