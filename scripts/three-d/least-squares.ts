/** Least squares by damped Gauss-Newton steps (Levenberg 1944, Marquardt 1963), the slopes by differences. */
import { cholesky } from "../../src/sim/hydraulics/loss-law/cholesky.ts";
import { backward, forward } from "../../src/sim/hydraulics/loss-law/gaussian-process.ts";

/** Part of each number's scale by which the slopes' differences are taken. */
const STEP = 1e-4;
/** The search ends when a step lowers the sum by less than this part. */
const MIN_GAIN = 1e-7;

/** @param scale the change of each number that matters */
export function leastSquares(
  residuals: (x: readonly number[]) => readonly number[],
  begin: readonly number[],
  scale: readonly number[],
  iterations: number,
): number[] {
  const size = (list: readonly number[]) => list.reduce((sum, each) => sum + each * each, 0);
  let x = [...begin];
  let at = residuals(x);
  let damping = 1e-2;
  for (let n = 0; n < iterations && damping < 1e6; n++) {
    const slopes = x.map((_, k) => {
      const moved = residuals(x.map((each, j) => each + (j === k ? STEP * scale[k]! : 0)));
      return moved.map((each, i) => (each - at[i]!) / STEP);
    });
    const dot = (one: readonly number[], other: readonly number[]) =>
      one.reduce((sum, each, i) => sum + each * other[i]!, 0);
    const matrix = slopes.map((one, k) =>
      Float64Array.from(slopes, (other, j) => dot(one, other) * (j === k ? 1 + damping : 1)),
    );
    const lower = cholesky(matrix);
    const step =
      lower &&
      backward(
        lower,
        forward(
          lower,
          slopes.map((one) => -dot(one, at)),
        ),
      );
    const next = step && x.map((each, k) => each + step[k]! * scale[k]!);
    const there = next && residuals(next);
    if (next && there && size(there) < size(at)) {
      const gain = 1 - size(there) / size(at);
      x = next;
      at = there;
      damping /= 5;
      if (gain < MIN_GAIN) break;
    } else damping *= 6;
  }
  return x;
}
