/** The body's own figure at an age: the grown outline carried to the proportions of a child, in parts of the body's height, y up from the ground. */
import { entryAt, lastOf } from "../../sim/checked/present.ts";
import { EARS, FEATURES, FIGURE, HEAD } from "../circuit/figure-shape.ts";
import type { Spot } from "../drawing/curve-drawing.ts";

/**
 * Heights of the grown figure's plane (crown, chin, shoulder, crotch, knee, ankle, sole) and what part of the body's height each lies at when 5 years
 * old and when grown. Heads in a height: 7.5 to 8 when grown (Domljan et al., Appl. Sci. 2024;14:7185), 5.75 at five years, between 5 at two
 * and 6 at six; legs at five 0.94 of the grown part (Stratz 1909, from memory).
 */
const LEVELS = [
  { at: -219, young: 1, grown: 1 },
  { at: 78, young: 0.826, grown: 0.873 },
  { at: 160, young: 0.796, grown: 0.838 },
  { at: 1070, young: 0.423, grown: 0.45 },
  { at: 1452, young: 0.269, grown: 0.287 },
  { at: 1990, young: 0.054, grown: 0.057 },
  { at: 2124, young: 0, grown: 0 },
] as const;

/**
 * Widths over those of the plane's figure, which is broad to hold its vessels, for the same height of the body. Of the height are: shoulders
 * with their muscle 0.255 at five years and 0.265 when grown, hips 0.185 and 0.195, head 0.127 and 0.088 (handbooks of body measures,
 * from memory).
 */
const WIDTHS = [
  { at: 40, young: 1.3, grown: 0.92 },
  { at: 100, young: 0.82, grown: 0.9 },
  { at: 260, young: 0.82, grown: 0.86 },
  { at: 420, young: 0.79, grown: 0.8 },
  { at: 760, young: 0.82, grown: 0.77 },
  { at: 1090, young: 0.77, grown: 0.79 },
  { at: 2000, young: 0.84, grown: 0.84 },
] as const;

const YOUNG_AT = 5;
const GROWN_AT = 18;
/** 1 at five years, 0 when grown. */
const youthOf = (years: number): number =>
  Math.min(1, Math.max(0, (GROWN_AT - years) / (GROWN_AT - YOUNG_AT)));

interface Row {
  readonly at: number;
  readonly young: number;
  readonly grown: number;
}

/** Straight between the rows of a table, level beyond its ends. */
function between(rows: readonly Row[], at: number, read: (row: Row) => number): number {
  const i = rows.findIndex((row) => row.at > at);
  if (i < 0) return read(lastOf(rows));
  const [a, b] = [entryAt(rows, Math.max(0, i - 1)), entryAt(rows, i)];
  const w = Math.max(0, (at - a.at) / (b.at - a.at || 1));
  return read(a) + (read(b) - read(a)) * w;
}

/** Carries spots of the grown figure's plane. */
function carry(years: number): (spot: Spot) => Spot {
  const youth = youthOf(years);
  const aged = (row: Row) => row.grown + youth * (row.young - row.grown);
  const per = 1 / (lastOf(LEVELS).at - LEVELS[0].at);
  return ([x, y]) => [(x - 500) * per * between(WIDTHS, y, aged), between(LEVELS, y, aged)];
}

/** Part of the height. */
export const headOf = (years: number): number => 1 - carry(years)([500, 78])[1];
export const crotchOf = (years: number): number => carry(years)([500, 1070])[1];

export interface GrownFigure {
  /** closed, back to front */
  readonly parts: readonly (readonly Spot[])[];
  /** open, faint */
  readonly lines: readonly (readonly Spot[])[];
}

const figures = new Map<number, GrownFigure>();

/** @param years of age, which the parts of the height follow */
export function grownFigure(years: number): GrownFigure {
  const before = figures.get(years);
  if (before) return before;
  const carried = carry(years);
  const figure: GrownFigure = {
    parts: [...EARS.map((ear) => ear.slice(1)), FIGURE, HEAD].map((part) => part.map(carried)),
    lines: FEATURES.map((line) => line.map(carried)),
  };
  figures.set(years, figure);
  return figure;
}
