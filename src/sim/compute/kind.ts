/** What every kind of request provides: how it is checked, described, answered and shown as a table. */
import type { Checked } from "../input-checks.ts";

/** JSON Schema 2020-12, as plain data. */
export type Schema = Readonly<Record<string, unknown>>;

/** An answer, or the reason for its absence (a sentence). */
export type Outcome = { readonly answer: object } | { readonly reason: string };

/** Rows under named columns; units in a column or in the column's name, 1 for dimensionless. */
export interface Table {
  readonly columns: readonly string[];
  readonly rows: readonly (readonly (string | number | boolean | null)[])[];
}

/** One kind of request. */
export interface Kind<Request = unknown> {
  /** the value of the request's "kind" */
  readonly kind: string;
  /** every number with its unit in its description */
  readonly schema: Schema;
  readonly check: (input: Record<string, unknown>) => Checked<Request>;
  /** @param progress fraction done, 0 to 1 */
  readonly run: (request: Request, progress?: (done: number) => void) => Outcome | Promise<Outcome>;
  /** The answer as a flat table; when left out or undefined, one row for each number: path, value, unit. */
  readonly table?: (answer: object) => Table | undefined;
  /** Unit of a number by its key path in the answer, for the flat table. */
  readonly unitOf?: (path: string) => string | undefined;
}

/** Forgets a kind's request type, so that kinds of different requests fit in one list. */
export const anyKind = <Request>(kind: Kind<Request>): Kind => kind as Kind;
