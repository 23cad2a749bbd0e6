/**
 * Covariances of one point with all of a process' cases, quickly: most cases share their values in most features, so that one exponential
 * serves each distinct value of a feature, and the joint part is a product of those. Plain indices: the first answer waits for these loops
 * before anything has been compiled.
 */
import { present } from "../../checked/present.ts";

/** How cases are alike, by the distance between their features (dimensionless). */
export interface Kernel {
  /** standard deviations: of the part in all features together, of the features' own parts */
  readonly together: number;
  readonly alone: number;
  /** by feature: the distance over which the answer changes; features beyond these play no part */
  readonly lengths: readonly number[];
}

/** Covariances in the unit of what is interpolated, squared. */
export interface Covariances {
  /** [cases] with a point [features]; overwritten by the next call of either */
  towards(at: ArrayLike<number>): Float64Array;
  /** of the cases with each other: [cases], up to each case itself */
  among(): Float64Array[];
}

/** @param points cases by features, dimensionless */
export function covariancesOf(
  points: readonly (readonly number[])[],
  { together, alone, lengths }: Kernel,
): Covariances {
  const features = lengths.length;
  const columns = lengths.map((length, k) => points.map((point) => present(point[k]) / length));
  const distinct = columns.map((column) => Float64Array.from(new Set(column)));
  const scales = Float64Array.from(lengths, (length) => 1 / length);
  const starts = distinct.map((_, k) => distinct.slice(0, k).reduce((sum, { length }) => sum + length, 0));
  // by case, by feature: where its value lies among the distinct ones
  const places = new Uint16Array(points.length * features);
  columns.forEach((column, k) => {
    const found = new Map(Array.from(present(distinct[k]), (value, u) => [value, starts[k]! + u]));
    column.forEach((value, i) => {
      places[i * features + k] = present(found.get(value));
    });
  });
  const near = new Float64Array(present(starts.at(-1)) + present(distinct.at(-1)).length);
  const covered = new Float64Array(points.length);
  const joint = together * together;
  const single = (alone * alone) / features;
  /** Fills the first cases' covariances with what `near` is laid for. */
  const cover = (out: Float64Array) => {
    for (let i = 0, p = 0; i < out.length; i++) {
      let product = joint;
      let sum = 0;
      for (let k = 0; k < features; k++, p++) {
        const alike = near[places[p]!]!;
        product *= alike;
        sum += alike;
      }
      out[i] = product + single * sum;
    }
    return out;
  };
  return {
    towards(at) {
      distinct.forEach((values, k) => {
        alikeness(at[k]! * scales[k]!, values, near, starts[k]!);
      });
      return cover(covered);
    },
    among() {
      // by feature: a row for each of its distinct values
      const tables = distinct.map((values) => {
        const table = new Float64Array(values.length ** 2);
        values.forEach((here, u) => {
          alikeness(here, values, table, u * values.length);
        });
        return table;
      });
      return points.map((_, i) => {
        tables.forEach((table, k) => {
          const start = starts[k]!;
          const count = distinct[k]!.length;
          const row = (places[i * features + k]! - start) * count;
          for (let u = 0; u < count; u++) near[start + u] = table[row + u]!;
        });
        return cover(new Float64Array(i + 1));
      });
    },
  };
}

/** How alike a feature's distinct values are to this one, 0 to 1; in lengths over which the answer changes. Written from `start` on. */
function alikeness(here: number, values: Float64Array, out: Float64Array, start: number): void {
  for (let u = 0; u < values.length; u++) {
    const away = here - values[u]!;
    out[start + u] = Math.exp(-0.5 * away * away);
  }
}

/** Sum of products of two lists' first entries, dimensionless. @param length how many; left out, all of the first list's */
export function inner(one: Float64Array, other: Float64Array, length = one.length): number {
  // Four sums that do not wait for each other.
  let [a, b, c, d] = [0, 0, 0, 0];
  let i = 0;
  for (; i + 3 < length; i += 4) {
    a += one[i]! * other[i]!;
    b += one[i + 1]! * other[i + 1]!;
    c += one[i + 2]! * other[i + 2]!;
    d += one[i + 3]! * other[i + 3]!;
  }
  for (; i < length; i++) a += one[i]! * other[i]!;
  return a + b + (c + d);
}

/** What the cases know of a point, as part of its variance: |x|^2 of L x = covered, L packed row by row. */
export function knownPart(lower: readonly Float64Array[]): (covered: Float64Array) => number {
  const x = new Float64Array(lower.length);
  const packed = new Float64Array((x.length * (x.length + 1)) / 2);
  lower.forEach((row, i) => {
    packed.set(row.subarray(0, i + 1), (i * (i + 1)) / 2);
  });
  return (covered) => {
    let known = 0;
    let start = 0;
    for (let i = 0; i < x.length; i++) {
      let rest = covered[i]!;
      for (let k = 0; k < i; k++) rest -= packed[start + k]! * x[k]!;
      const value = rest / packed[start + i]!;
      x[i] = value;
      known += value * value;
      start += i + 1;
    }
    return known;
  };
}
