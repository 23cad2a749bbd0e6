/**
 * Interpolation between computed cases by a Gaussian process (Rasmussen & Williams 2006): a squared exponential in all features together,
 * and the mean of one for each feature alone. Far from every case it answers 0 and its own whole spread.
 */
import { entryAt } from "../../checked/present.ts";
import { cholesky } from "./cholesky.ts";
import { covariancesOf, inner, type Kernel, knownPart } from "./quick-covariance.ts";

/** The covariance's own numbers, in the unit of what is interpolated (lengths: of the features). */
export interface Spread extends Kernel {
  /** standard deviation of what no feature explains */
  readonly noise: number;
}

/** Solves L x = right; dimensionless [n x n, the triangle's rows] and [n]. */
export function forward(lower: readonly Float64Array[], right: ArrayLike<number>): Float64Array {
  const x = Float64Array.from(right);
  for (let i = 0; i < x.length; i++) {
    const row = entryAt(lower, i);
    x[i] = (entryAt(x, i) - inner(row, x, i)) / entryAt(row, i);
  }
  return x;
}

/** Solves L' x = right; shapes as in {@link forward}. Any unit. */
export function backward(lower: readonly Float64Array[], right: ArrayLike<number>): Float64Array {
  const x = Float64Array.from(right);
  for (let i = x.length - 1; i >= 0; i--) {
    let sum = entryAt(x, i);
    for (let k = i + 1; k < x.length; k++) sum -= entryAt(entryAt(lower, k), i) * entryAt(x, k);
    x[i] = sum / entryAt(entryAt(lower, i), i);
  }
  return x;
}

/** The computed cases, each in the unit of its feature or of what is interpolated. */
export interface Samples {
  /** by case, by feature */
  readonly points: readonly (readonly number[])[];
  readonly values: readonly number[];
  /** standard error of each value */
  readonly errors: readonly number[];
}

/** In the unit of the samples' values. */
export interface Estimate {
  readonly mean: number;
  /** standard deviation of a case's value about it */
  readonly deviation: number;
}

/** Interpolates at a point [features]. */
export interface Process {
  mean(at: ArrayLike<number>): number;
  estimate(at: ArrayLike<number>): Estimate;
}

/** @throws where the cases' covariance is not positive, such as for one case given twice without an error */
export function processOf({ points, values, errors }: Samples, spread: Spread): Process {
  const { towards, among } = covariancesOf(points, spread);
  const matrix = among();
  matrix.forEach((row, i) => {
    row[i] = entryAt(row, i) + spread.noise ** 2 + entryAt(errors, i) ** 2;
  });
  const lower = cholesky(matrix);
  if (!lower) throw new Error("the cases of the loss law have a covariance that is not positive");
  const weights = backward(lower, forward(lower, values));
  const own = spread.together ** 2 + spread.alone ** 2;
  const known = knownPart(lower);
  return {
    mean: (at) => inner(towards(at), weights),
    estimate(at) {
      const covered = towards(at);
      const deviation = Math.sqrt(Math.max(0, own - known(covered)) + spread.noise ** 2);
      return { mean: inner(covered, weights), deviation };
    },
  };
}
