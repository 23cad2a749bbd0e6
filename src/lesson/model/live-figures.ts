/** Live numbers: `expression | unit digits flags` -> Figure -> the number for a situation. */

import { present } from "../../sim/checked/present.ts";
import { nearestMatch } from "../../sim/faults.ts";
import { type Expression, evaluate, type Parsed, parseExpression } from "./expression.ts";
import { lookupIn, type Situation } from "./figure-paths.ts";

/** Unit as written in a lesson -> unit in `src/i18n`. */
const UNITS: Readonly<Record<string, string>> = {
  mmHg: "mmHg",
  cmH2O: "cmH2O",
  "L/min": "L/min",
  "L/min/m2": "L/min/m2",
  WU: "WU",
  "WU.m2": "WU.m2",
  mm: "mm",
  mm2: "mm2",
  "m/s": "m/s",
  m2: "m2",
  mL: "mL",
  "mL/h": "mL/h",
  "mL/s": "mL/s",
  "mL/min": "mL/min",
  "mL/dL": "mL/dL",
  mW: "mW",
  s: "s",
  years: "years",
  MET: "MET",
  "/min": "1/min",
  "g/dL": "g/dL",
  "%": "%",
  times: "x",
  number: "1",
};

export interface Format {
  /** a unit of `src/i18n` */
  readonly unit: string;
  readonly digits: number;
  readonly signed: boolean;
  readonly bare: boolean;
}

export interface Figure {
  /** As written, blanks tidied: what a translation must repeat. */
  readonly written: string;
  readonly of: Expression;
  readonly format: Format;
}

/** The part after the bar: `mmHg 1 signed`. */
export function parseFormat(text: string): Parsed<Format> {
  const [unit = "", digits = "", ...flags] = text.trim().split(/\s+/);
  if (!Object.hasOwn(UNITS, unit)) {
    const units = Object.keys(UNITS);
    const near = nearestMatch(unit, units);
    return {
      ok: false,
      found: `unit "${unit}"`,
      allowed: units.join(", ") + (near ? `; nearest: ${near}` : ""),
    };
  }
  if (!/^[0-3]$/.test(digits))
    return { ok: false, found: `digits "${digits}"`, allowed: "0, 1, 2 or 3 after the unit" };
  const stray = flags.find((flag) => flag !== "signed" && flag !== "bare");
  if (stray !== undefined) return { ok: false, found: `"${stray}"`, allowed: "signed, bare" };
  return {
    ok: true,
    value: {
      unit: present(UNITS[unit]),
      digits: Number(digits),
      signed: flags.includes("signed"),
      bare: flags.includes("bare"),
    },
  };
}

/** The text between the double braces. */
export function parseFigure(text: string): Parsed<Figure> {
  const bar = text.lastIndexOf("|");
  if (bar < 0) return { ok: false, found: `{{${text}}}`, allowed: "{{ expression | unit digits }}" };
  const of = parseExpression(text.slice(0, bar));
  if (!of.ok) return of;
  const format = parseFormat(text.slice(bar + 1));
  if (!format.ok) return format;
  return {
    ok: true,
    value: { written: text.trim().replace(/\s+/g, " "), of: of.value, format: format.value },
  };
}

/** A number as it stood, with the ends of its band where it has one. */
export type Kept = number | readonly [value: number, low: number, high: number];

/** null while the model has not answered (or the flow has not been measured). */
export const figureValue = (figure: Figure, situation: Situation): number | null =>
  evaluate(figure.of, lookupIn(situation));
