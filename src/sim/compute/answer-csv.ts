/** Any answer as a flat table, and any table as CSV (RFC 4180). */
import type { Kind, Table } from "./kind.ts";

type Cell = string | number | boolean | null;

/** One row for each number, word or claim of an answer, by its key path. */
function flatTable(answer: object, unitOf: (path: string) => string | undefined): Table {
  const rows: Cell[][] = [];
  const visit = (value: unknown, path: string) => {
    if (typeof value === "object" && value !== null) {
      for (const [key, part] of Object.entries(value)) visit(part, path ? `${path}.${key}` : key);
    } else if (value !== undefined) rows.push([path, value as Cell, unitOf(path) ?? ""]);
  };
  visit(answer, "");
  return { columns: ["quantity", "value", "unit"], rows };
}

/** The answer as a table; every number with its unit in the row or column head. */
export const tableOf = (kind: Kind, answer: object): Table =>
  kind.table?.(answer) ?? flatTable(answer, (path) => kind.unitOf?.(path));

/** CSV with CRLF line ends; a cell with a comma, quote or line end is quoted. */
export const csvOf = ({ columns, rows }: Table): string =>
  [columns, ...rows].map((row) => `${row.map(quoted).join(",")}\r\n`).join("");

function quoted(cell: Cell): string {
  const text = cell === null ? "" : String(cell);
  return /[",\r\n]/.test(text) ? `"${text.replaceAll('"', '""')}"` : text;
}
