/** The page docs/validation-physiology.md as text, and its figure. */
import { solvePersons } from "./persons.ts";
import { randomSection } from "./random-section.ts";
import { sections } from "./rows.ts";
import { sensitivitySection, swings } from "./sensitivity.ts";
import { stressSections } from "./stress-rows.ts";
import { tornadoFigure } from "./tornado.ts";
import type { Row, Section } from "./validation-row.ts";

const passes = ({ value, low, high }: Row): boolean => value >= low - 1e-9 && value <= high + 1e-9;
const shown = (value: number): string => {
  const text = String(Number(value.toPrecision(3)));
  return text === "-0" ? "0" : text;
};

const line = (row: Row): string =>
  `| ${row.quantity} | ${[shown(row.value), ...(row.unit === "1" ? [] : [row.unit])].join(" ")} | ${row.low} to ${row.high} | ${row.source} | ${
    passes(row) ? "pass" : `outside${row.remark ? `: ${row.remark}` : ""}`
  } |`;

const table = ({ title, rows }: Section): string =>
  [
    `## ${title}`,
    "",
    "| quantity | ours | published | source | |",
    "|---|---|---|---|---|",
    ...rows.map(line),
    "",
  ].join("\n");

/** Beside the page, as it is named in it. */
export const TORNADO = "validation/sensitivity.svg";

export function validationPage(): { readonly text: string; readonly tornado: string } {
  const atRest = sections(solvePersons());
  const stressed = stressSections();
  const count = (parts: readonly Section[]) => {
    const rows = parts.flatMap((section) => section.rows);
    return `${rows.filter(passes).length} of ${rows.length}`;
  };
  const moved = swings();
  const text = [
    "# Physiology: our values beside published ones",
    "",
    "Made by `npx tsx src/cli/validation.ts`; a test fails when this page is not current. One network and one parameter set a body",
    "(docs/model-circulation.md); nothing is tuned row by row, and rows that fall outside stay here with the reason. The persons are invented.",
    "Where no other condition is named: rest, quiet breathing, atrial pressure held, 1 MET. Sources in full: docs/model-circulation.md.",
    "",
    `${count(atRest)} quantities at rest and in usual conditions lie inside the published range, and ${count(stressed)} under stress.`,
    "",
    ...[...atRest, ...stressed].map(table),
    sensitivitySection(moved, TORNADO),
    ...randomSection(),
  ].join("\n");
  return { text, tornado: tornadoFigure(moved) };
}
