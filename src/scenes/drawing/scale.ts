/** Axis ranges with round ends and round marks. */
import { nice, ticks } from "d3-array";

export interface Range {
  readonly min: number;
  readonly max: number;
  /** ascending, inside the range */
  readonly marks: readonly number[];
}

/** A range that holds all the finite values given, zero too when asked; at least `least` wide. */
export function rangeOf(
  values: Iterable<number>,
  options: { readonly zero?: boolean; readonly count?: number; readonly least?: number } = {},
): Range {
  let min = options.zero ? 0 : Number.POSITIVE_INFINITY;
  let max = options.zero ? 0 : Number.NEGATIVE_INFINITY;
  for (const value of values) {
    if (!Number.isFinite(value)) continue;
    if (value < min) min = value;
    if (value > max) max = value;
  }
  if (min > max) [min, max] = [0, 1];
  const least = options.least ?? 1e-6;
  if (max - min < least) {
    if (min === 0) max = least;
    else if (max === 0) min = -least;
    else [min, max] = [(min + max - least) / 2, (min + max + least) / 2];
  }
  const count = options.count ?? 3;
  const [low, high] = nice(min, max, count);
  return { min: low, max: high, marks: ticks(low, high, count) };
}

/** As many of the marks as stand at least `room` px apart over `length` px; zero stays when it is one of them. */
export function thinned(range: Range, length: number, room: number): readonly number[] {
  const apart = length / Math.max(1, range.marks.length - 1);
  const every = Math.max(1, Math.ceil(room / apart));
  const from = Math.max(0, range.marks.indexOf(0)) % every;
  return range.marks.filter((_, i) => i % every === from);
}

/** Decimals that distinguish neighbouring marks. */
export function digitsOf(range: Range): number {
  const [a = 0, b = 1] = range.marks;
  return Math.max(0, -Math.floor(Math.log10(Math.abs(b - a)) + 1e-9));
}
