/** Field over handbook as the table of docs/model-pathways.md. */
import type { FieldRatios } from "../../sim/hydraulics/field-ratio.ts";

/** Where the table is in the page. */
export const RATIO_TABLE = /\| \| head-on[\s\S]*?\n(?=\n)/;

/** Rows by stage, columns by offset and narrowing; a cell holds the powers, and in brackets the drops, over the indices. */
export function ratioTable({
  cavalOffset,
  pathwayNarrowing,
  index,
  powers,
  drops,
  audits,
}: FieldRatios): string {
  const columns = cavalOffset.flatMap((offset) =>
    pathwayNarrowing.map((narrowing) => {
      const place = offset === 0 ? "head-on" : `offset ${offset} mm`;
      return narrowing === 0 ? place : `${place}, narrowed ${narrowing} %`;
    }),
  );
  const row = (stage: string): string => {
    const narrowings = powers[stage]!.length / (cavalOffset.length * index.length);
    const cells = cavalOffset.flatMap((_, i) =>
      pathwayNarrowing.map((_, j) => {
        if (j >= narrowings) return "-";
        const from = (i * narrowings + j) * index.length;
        const three = (of: readonly (number | null)[]) =>
          of
            .slice(from, from + index.length)
            .map((ratio) => ratio?.toFixed(2) ?? "-")
            .join("/");
        return `${three(powers[stage]!)} (${three(drops[stage]!)})`;
      }),
    );
    const [least, most] = [Math.min(...audits[stage]!), Math.max(...audits[stage]!)];
    return [stage, ...cells, `${least.toFixed(0)} to ${most.toFixed(0)} %`].join(" | ");
  };
  const lines = [["", ...columns, "energy budgets"].join(" | "), Object.keys(powers).map(row)].flat();
  const [head, ...rows] = lines.map((line) => `| ${line} |`.replace("|  |", "| |"));
  return `${[head, `|${"---|".repeat(columns.length + 2)}`, ...rows].join("\n")}\n`;
}
