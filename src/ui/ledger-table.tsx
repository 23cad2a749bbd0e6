/** The loss ledger as a table: where along the pathway pressure and power are spent. */
import { useState } from "preact/hooks";
import { formatNumber, t, unitSymbol } from "../i18n/index.ts";
import type { Circulation } from "../sim/circulation/answer/answer.ts";

type LedgerRow = Circulation["pathway"]["ledger"][number];

/** Columns that can be sorted by; "path" is the blood's own order. */
const COLUMNS = ["path", "pressureDrop", "powerLoss", "share"] as const;
type Column = (typeof COLUMNS)[number];

export interface LedgerTableProps {
  readonly rows: readonly LedgerRow[];
  /** The selected element, highlighted here and in the scene. */
  readonly focus: string | null;
  readonly onFocus: (element: string | null) => void;
}

export function LedgerTable({ rows, focus, onFocus }: LedgerTableProps) {
  const [by, setBy] = useState<Column>("path");
  const sorted = by === "path" ? rows : [...rows].sort((a, b) => b[by] - a[by]);
  const header = (column: Column) => (
    <th
      scope="col"
      key={column}
      aria-sort={by !== column ? "none" : column === "path" ? "ascending" : "descending"}
    >
      <button type="button" class="quiet" onClick={() => setBy(column)}>
        {t(`ledger.${column}`)}
      </button>
    </th>
  );
  return (
    <table class="ledger">
      <caption>{t("ledger.caption")}</caption>
      <thead>
        <tr>{COLUMNS.map(header)}</tr>
      </thead>
      <tbody>
        {sorted.map((row) => (
          <tr
            key={`${row.branch}.${row.element}`}
            class={focus === row.element ? "lit" : undefined}
            onPointerEnter={() => onFocus(row.element)}
            onPointerLeave={() => onFocus(null)}
          >
            <th scope="row">
              <button
                type="button"
                class="quiet"
                title={t("ledger.source", { source: row.source })}
                onFocus={() => onFocus(row.element)}
                onBlur={() => onFocus(null)}
                onClick={() => onFocus(row.element)}
              >
                {t(`element.${row.element}`)}
              </button>
              <span class="branch">{t(`branch.${row.branch}`)}</span>
              {!row.inRange && <span class="out-of-range">{t("ledger.outOfRange")}</span>}
            </th>
            <Cell value={row.pressureDrop} digits={2} unit="mmHg" />
            <Cell value={row.powerLoss} digits={2} unit="mW" />
            <Cell value={100 * row.share} digits={0} unit="%" />
          </tr>
        ))}
      </tbody>
    </table>
  );
}

const Cell = ({ value, digits, unit }: { value: number; digits: number; unit: string }) => (
  <td>
    <bdi>
      {formatNumber(value, digits)}
      <span class="unit">{`\u202f${unitSymbol(unit)}`}</span>
    </bdi>
  </td>
);
