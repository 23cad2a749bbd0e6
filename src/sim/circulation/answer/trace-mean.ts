/** The mean of a curve of `traces`, whose first value stands again at the end; in the curve's own unit (mmHg, L/min, mL). */
export function traceMean(curve: Float64Array): number {
  let sum = 0;
  for (const value of curve.subarray(1)) sum += value;
  return sum / Math.max(1, curve.length - 1);
}
