/** Length scales and spreads of a Gaussian process at the greatest marginal likelihood, with weak log-normal expectations. */
import { conjugateGradient } from "fmin/index.js";
import { cholesky } from "../../src/sim/hydraulics/loss-law/cholesky.ts";
import { INTERPOLATED } from "../../src/sim/hydraulics/loss-law/features.ts";
import {
  backward,
  forward,
  type Samples,
  type Spread,
} from "../../src/sim/hydraulics/loss-law/gaussian-process.ts";
import { inner } from "../../src/sim/hydraulics/loss-law/quick-covariance.ts";

/** Expected values, and how far their logarithms may stray. */
const EXPECTED = { together: 0.15, alone: 0.25, noise: 0.04, length: 1.5 };
const STRAY = { together: 0.5, alone: 0.5, noise: 0.4, length: 0.5 };
const ITERATIONS = 60;

const spreadOf = (x: readonly number[]): Spread => ({
  together: Math.exp(x[0]!),
  alone: Math.exp(x[1]!),
  noise: Math.exp(x[2]!),
  lengths: x.slice(3).map(Math.exp),
});

const logarithms = ({ together, alone, noise, lengths }: Spread): number[] =>
  [together, alone, noise, ...lengths].map(Math.log);

/** @param start what a fit to nearly the same cases found */
export function fitSpread(samples: Samples, start?: Spread): Spread {
  const lengths = (value: number) => Array<number>(INTERPOLATED).fill(value);
  const expected = logarithms({ ...EXPECTED, lengths: lengths(EXPECTED.length) });
  const stray = [STRAY.together, STRAY.alone, STRAY.noise, ...lengths(STRAY.length)];
  const apart = distances(samples.points);
  const value = (x: number[], gradient: number[]) => {
    const found = likelihood(samples, apart, x, gradient);
    return x.reduce((sum, each, i) => {
      const away = (each - expected[i]!) / stray[i]!;
      gradient[i]! += away / stray[i]!;
      return sum + 0.5 * away * away;
    }, found);
  };
  const begin = start ? logarithms(start) : expected;
  return spreadOf(conjugateGradient(value, begin, { maxIterations: start ? 12 : ITERATIONS }).x);
}

/** Squares of how far apart two cases lie, by feature, by pair (j <= i). */
function distances(points: Samples["points"]): Float64Array[] {
  const n = points.length;
  return Array.from({ length: INTERPOLATED }, (_, k) => {
    const squares = new Float64Array((n * (n + 1)) / 2);
    for (let i = 0, at = 0; i < n; i++)
      for (let j = 0; j <= i; j++, at++) squares[at] = (points[i]![k]! - points[j]![k]!) ** 2;
    return squares;
  });
}

/** Negative logarithm of the marginal likelihood, and its gradient (Rasmussen & Williams 2006, equation 5.9). */
function likelihood(
  { values, errors }: Samples,
  apart: readonly Float64Array[],
  x: readonly number[],
  gradient: number[],
): number {
  const { together, alone, noise, lengths } = spreadOf(x);
  const n = values.length;
  const pairs = apart[0]!.length;
  const exponents = new Float64Array(pairs);
  const own = new Float64Array(pairs);
  const singles = apart.map((squares, k) => {
    const scale = -0.5 / lengths[k]! ** 2;
    const single = new Float64Array(pairs);
    for (let at = 0; at < pairs; at++) {
      const exponent = squares[at]! * scale;
      exponents[at]! += exponent;
      own[at]! += single[at] = (alone ** 2 / lengths.length) * Math.exp(exponent);
    }
    return single;
  });
  const all = exponents.map((exponent) => together ** 2 * Math.exp(exponent));
  const matrix = errors.map((error, i) => {
    const start = (i * (i + 1)) / 2;
    const row = new Float64Array(n);
    for (let j = 0; j <= i; j++) row[j] = all[start + j]! + own[start + j]!;
    row[i]! += noise ** 2 + error ** 2;
    return row;
  });
  gradient.fill(0);
  const lower = cholesky(matrix);
  if (!lower) return 1e9;
  const weights = backward(lower, forward(lower, values));
  const inverse = inverseOf(lower);
  // half the trace's term; a pair off the diagonal stands for its mirror too
  const pulls = new Float64Array(pairs);
  for (let i = 0, at = 0; i < n; i++)
    for (let j = 0; j <= i; j++, at++)
      pulls[at] = (i === j ? 0.5 : 1) * (inverse[i]![j]! - weights[i]! * weights[j]!);
  let noisy = 0;
  for (let i = 0; i < n; i++) noisy += pulls[(i * (i + 3)) / 2]!;
  gradient[0] = 2 * inner(pulls, all);
  gradient[1] = 2 * inner(pulls, own);
  gradient[2] = 2 * noise ** 2 * noisy;
  apart.forEach((squares, k) => {
    const single = singles[k]!;
    let sum = 0;
    for (let at = 0; at < pairs; at++) sum += pulls[at]! * squares[at]! * (all[at]! + single[at]!);
    gradient[3 + k] = sum / lengths[k]! ** 2;
  });
  const fit = values.reduce((sum, each, i) => sum + 0.5 * each * weights[i]!, 0);
  return fit + lower.reduce((sum, row, i) => sum + Math.log(row[i]!), 0);
}

/** Lower half of the inverse of L L', from L's own inverse. */
function inverseOf(lower: readonly Float64Array[]): Float64Array[] {
  const n = lower.length;
  const own = lower.map((row, i) => {
    const inverted = new Float64Array(n);
    inverted[i] = 1 / row[i]!;
    return inverted;
  });
  for (let i = 0; i < n; i++)
    for (let k = 0; k < i; k++) addTo(own[i]!, own[k]!, -lower[i]![k]! / lower[i]![i]!, k);
  const inverse = lower.map(() => new Float64Array(n));
  own.forEach((row, last) => {
    for (let i = 0; i <= last; i++) addTo(inverse[i]!, row, row[i]!, i);
  });
  return inverse;
}

/** Adds `by` times the entries 0 to `last` of `row`. */
function addTo(target: Float64Array, row: Float64Array, by: number, last: number): void {
  for (let j = 0; j <= last; j++) target[j]! += by * row[j]!;
}
