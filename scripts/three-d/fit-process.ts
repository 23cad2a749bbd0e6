/** Length scales and spreads of a Gaussian process at the greatest marginal likelihood, with weak log-normal expectations. */
import { conjugateGradient } from "fmin/index.js";
import { INTERPOLATED } from "../../src/sim/hydraulics/loss-law/features.ts";
import {
  backward,
  cholesky,
  covariances,
  forward,
  type Samples,
  type Spread,
} from "../../src/sim/hydraulics/loss-law/gaussian-process.ts";

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
  const value = (x: number[], gradient: number[]) => {
    const found = likelihood(samples, x, gradient);
    return x.reduce((sum, each, i) => {
      const away = (each - expected[i]!) / stray[i]!;
      gradient[i]! += away / stray[i]!;
      return sum + 0.5 * away * away;
    }, found);
  };
  const begin = start ? logarithms(start) : expected;
  return spreadOf(conjugateGradient(value, begin, { maxIterations: start ? 12 : ITERATIONS }).x);
}

/** Negative logarithm of the marginal likelihood, and its gradient (Rasmussen & Williams 2006, equation 5.9). */
function likelihood(samples: Samples, x: readonly number[], gradient: number[]): number {
  const spread = spreadOf(x);
  const { points, values } = samples;
  const n = points.length;
  gradient.fill(0);
  const lower = cholesky(covariances(samples, spread));
  if (!lower) return 1e9;
  const weights = backward(lower, forward(lower, values));
  const inverse = inverseOf(lower);
  const { together, alone, noise, lengths } = spread;
  for (let i = 0; i < n; i++) {
    for (let j = 0; j <= i; j++) {
      // half the trace's term, twice for what mirrors it
      const pull = (i === j ? -0.5 : -1) * (weights[i]! * weights[j]! - inverse[i]![j]!);
      const halves = lengths.map((length, k) => 0.5 * ((points[i]![k]! - points[j]![k]!) / length) ** 2);
      const all = together ** 2 * Math.exp(-halves.reduce((sum, half) => sum + half, 0));
      let own = 0;
      halves.forEach((half, k) => {
        const single = (alone ** 2 / lengths.length) * Math.exp(-half);
        own += single;
        gradient[3 + k]! += pull * 2 * half * (all + single);
      });
      gradient[0]! += pull * 2 * all;
      gradient[1]! += pull * 2 * own;
      if (i === j) gradient[2]! += pull * 2 * noise ** 2;
    }
  }
  const fit = values.reduce((sum, each, i) => sum + 0.5 * each * weights[i]!, 0);
  return fit + lower.reduce((sum, row, i) => sum + Math.log(row[i]!), 0);
}

function inverseOf(lower: readonly Float64Array[]): Float64Array[] {
  return lower.map((_, i) => {
    const unit = new Float64Array(lower.length);
    unit[i] = 1;
    return backward(lower, forward(lower, unit));
  });
}
