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

/**
 * @param points cases by features, dimensionless
 * @returns covariances [cases] with a point [features], in the unit of what is interpolated, squared; overwritten by the next call
 */
export function covariancesTowards(
  points: readonly (readonly number[])[],
  { together, alone, lengths }: Kernel,
): (at: ArrayLike<number>) => Float64Array {
  const features = lengths.length;
  const columns = lengths.map((length, k) => points.map((point) => present(point[k]) / length));
  const distinct = columns.map((column) => Float64Array.from(new Set(column)));
  const scales = Float64Array.from(lengths, (length) => 1 / length);
  const starts = Uint16Array.from(distinct, (_, k) =>
    distinct.slice(0, k).reduce((sum, { length }) => sum + length, 0),
  );
  const values = Float64Array.from(distinct.flatMap((each) => [...each]));
  // by case, by feature: where its value lies among the distinct ones
  const places = Uint16Array.from(
    points.flatMap((_, i) =>
      columns.map((column, k) => starts[k]! + present(distinct[k]).indexOf(present(column[i]))),
    ),
  );
  const near = new Float64Array(values.length);
  const covered = new Float64Array(points.length);
  const joint = together * together;
  const single = (alone * alone) / features;
  return (at) => {
    for (let k = 0; k < features; k++) {
      const here = at[k]! * scales[k]!;
      const end = k + 1 < features ? starts[k + 1]! : values.length;
      for (let u = starts[k]!; u < end; u++) {
        const away = here - values[u]!;
        near[u] = Math.exp(-0.5 * away * away);
      }
    }
    for (let i = 0; i < covered.length; i++) {
      let product = joint;
      let sum = 0;
      for (let k = 0; k < features; k++) {
        const alike = near[places[i * features + k]!]!;
        product *= alike;
        sum += alike;
      }
      covered[i] = product + single * sum;
    }
    return covered;
  };
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
