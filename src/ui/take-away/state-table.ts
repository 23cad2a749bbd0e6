/** The state and its ledger as a table for a spreadsheet: settings, results and losses with units, cautions, version, date. */

import { type Band, language, shareOf, t } from "../../i18n/index.ts";
import { present } from "../../sim/checked/present.ts";
import type { Circulation } from "../../sim/circulation/answer/answer.ts";
import { actsIn, PARAMETERS, settingOf } from "../../sim/parameters/parameters.ts";
import { VERSION } from "../app-version.ts";
import { cautionSentences } from "../cautions.tsx";
import { figuresOf } from "../figures.ts";
import { ruleName } from "../rule-name.ts";
import { type Cell, writeCsv } from "./csv.ts";

/** UCUM codes of our units, case-sensitive form (docs/constants-from-memory.md). */
const UCUM: Readonly<Record<string, string>> = {
  mmHg: "mm[Hg]",
  "L/min": "L/min",
  mW: "mW",
  mm: "mm",
  mL: "mL",
  "%": "%",
  years: "a",
  m: "m",
  mm2: "mm2",
  m2: "m2",
  "g/dL": "g/dL",
  s: "s",
  "1/min": "/min",
  "L/min/m2": "L/min/m2",
  "mL/min/m2": "mL/min/m2",
  "%/mmHg": "%/mm[Hg]",
  "WU.m2": "mm[Hg].min/L.m2",
  MET: "[MET]",
  cmH2O: "cm[H2O]",
  "mmol/L": "mmol/L",
  "mL/min/kg": "mL/min/kg",
};

export interface TableSource {
  readonly circulation: Circulation;
  /** The link that opens this state. */
  readonly link: string;
  /** RFC 3339 */
  readonly date: string;
}

/** Columns: section, name, value, ends of its band, unit, UCUM code, source. Numbers keep all digits and the point as decimal sign. */
export function writeTable({ circulation, link, date }: TableSource): string {
  const { request } = circulation;
  const row = (
    section: string,
    name: string,
    value: Cell,
    unit = "",
    { source = "", band = ["", ""] }: { source?: string; band?: Band | readonly ["", ""] } = {},
  ): readonly Cell[] => [
    t(`table.${section}`),
    name,
    value,
    ...band,
    unit === "1" ? "" : unit,
    UCUM[unit] ?? "",
    source,
  ];
  const about = (name: string, value: Cell, unit?: string) => row("about", t(`table.${name}`), value, unit);
  const results = figuresOf(circulation).flatMap(({ name, value, unit, band }) =>
    value === null ? [] : [row("results", t(`figure.${name}`), value, unit, band ? { band } : {})],
  );
  const { shares } = circulation;
  const parts = (shares ? (["ivc", "svc"] as const) : []).flatMap((vein) =>
    (["left", "right"] as const).map((lung) => {
      const { value, band } = shareOf(present(shares)[vein], lung);
      const name = `${t(`opening.${vein}`)} → ${t(`opening.${lung}`)}`;
      return row("shares", name, value, "%", { band });
    }),
  );
  const settings = PARAMETERS.filter((parameter) => actsIn(parameter, request.stage)).map((parameter) =>
    row(
      "settings",
      t(`parameter.${parameter.name}`),
      settingOf(request, parameter),
      parameter.kind === "number" ? parameter.unit : "",
      { source: parameter.name },
    ),
  );
  const losses = circulation.pathway.ledger.flatMap((loss) => {
    const name = t(`element.${loss.element}`);
    return [
      row("losses", name, loss.pressureDrop, "mmHg", { source: loss.source }),
      row("losses", name, loss.powerLoss, "mW", { source: loss.source }),
    ];
  });
  return writeCsv([
    ["section", "name", "value", "low", "high", "unit", "ucum", "source"].map((column) =>
      t(`table.column.${column}`),
    ),
    about("program", `${t("name")} ${VERSION}`),
    about("date", date),
    about("language", language()),
    about("link", link),
    about("stage", t(`stage.${request.stage}`)),
    about("volumeRule", ruleName(request.stage, request.volumeRule)),
    about("age", request.body.ageYears, "years"),
    about("bsa", request.body.bsa, "m2"),
    about("haemoglobin", request.body.haemoglobin, "g/dL"),
    ...results,
    ...parts,
    ...settings,
    ...losses,
    ...cautionSentences().map((sentence) => row("caution", sentence, "")),
  ]);
}
