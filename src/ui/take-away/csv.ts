/** Tables of comma-separated values as RFC 4180 has them. */

export type Cell = string | number;

/** CRLF between records; a cell with a comma, a quote or a line break is quoted. */
export const writeCsv = (rows: readonly (readonly Cell[])[]): string =>
  rows.map((row) => `${row.map(writeCell).join(",")}\r\n`).join("");

function writeCell(cell: Cell): string {
  const text = String(cell);
  // A leading sign of a formula is defused: spreadsheets would run it.
  const safe = typeof cell === "string" && /^[=+\-@\t\r]/.test(text) ? `'${text}` : text;
  return /[",\r\n]/.test(safe) ? `"${safe.replaceAll('"', '""')}"` : safe;
}
