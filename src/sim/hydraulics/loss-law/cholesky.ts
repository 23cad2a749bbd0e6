/** The triangle of a covariance's matrix. Plain indices: the first answer waits for these loops before anything has been compiled. */
import { entryAt } from "../../checked/present.ts";
import { inner } from "./quick-covariance.ts";

/** Lower triangle L of a symmetric positive matrix, L L' = matrix, of which the lower triangle is read; undefined where it is not positive. */
export function cholesky(matrix: readonly Float64Array[]): Float64Array[] | undefined {
  const lower = matrix.map((row) => row.slice());
  // Two rows by two columns at a time: each number that is read serves two products.
  for (let i = 0; i < lower.length; i += 2) {
    const rows = [entryAt(lower, i), lower[i + 1] ?? entryAt(lower, i)] as const;
    for (let j = 0; j < i; j += 2) reduce(rows, [entryAt(lower, j), entryAt(lower, j + 1)], j);
    for (let n = i; n < Math.min(i + 2, lower.length); n++) {
      const row = entryAt(lower, n);
      if (n > i) row[i] = (row[i]! - inner(row, rows[0], i)) / rows[0][i]!;
      const rest = row[n]! - inner(row, row, n);
      if (!(rest > 0)) return undefined;
      row[n] = Math.sqrt(rest);
    }
  }
  return lower;
}

type Pair = readonly [Float64Array, Float64Array];

/** Entries j and j + 1 of two rows, where two rows above are known. */
function reduce([one, other]: Pair, [above, next]: Pair, j: number): void {
  let a = 0;
  let b = 0;
  let c = 0;
  let d = 0;
  for (let k = 0; k < j; k++) {
    const x = one[k]!;
    const y = other[k]!;
    const u = above[k]!;
    const v = next[k]!;
    a += x * u;
    b += x * v;
    c += y * u;
    d += y * v;
  }
  one[j] = (one[j]! - a) / above[j]!;
  one[j + 1] = (one[j + 1]! - b - one[j]! * next[j]!) / next[j + 1]!;
  if (other === one) return;
  other[j] = (other[j]! - c) / above[j]!;
  other[j + 1] = (other[j + 1]! - d - other[j]! * next[j]!) / next[j + 1]!;
}
