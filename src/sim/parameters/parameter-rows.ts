/** How the rows of the parameter tables are written: one short line of values each, and the sources that many share. */
import { entryAt } from "../checked/present.ts";
import type { NumberParameter, ParameterGroup, WordParameter } from "./parameter.ts";

export const SETS = "physiology values, section 4 (the body's parameter set)";
export const PRACTICE = "common practice, no source";
export const TEACHING = "teaching value, no source";

type Row = readonly [
  name: string,
  unit: string,
  range: readonly [min: number, max: number, step: number],
  value: NumberParameter["default"],
  meaning: string,
  source: string,
];

/** Rows of numbers of one group: range, step and default in each row's own unit. */
export const numbers = (group: ParameterGroup, rows: readonly Row[]): NumberParameter[] =>
  rows.map(([name, unit, [min, max, step], value, meaning, source]) => ({
    kind: "number",
    name,
    group,
    unit,
    min,
    max,
    step,
    default: value,
    meaning,
    source,
  }));

/** A row of words, the first of which is the default. */
export const word = (
  group: ParameterGroup,
  name: string,
  words: readonly string[],
  meaning: string,
  source: string,
): WordParameter => ({ kind: "word", group, name, words, default: entryAt(words, 0), meaning, source });

/** To the nearest step, in the value's own unit. */
export const round = (value: number, step: number): number => Math.round(value / step) * step;
