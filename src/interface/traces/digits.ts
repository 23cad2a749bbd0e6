/** Decimals that tell neighbouring marks apart. */
export function digitsFor(marks: readonly number[]): number {
  const step = Math.abs((marks[1] ?? 1) - (marks[0] ?? 0)) || 1;
  return Math.max(0, Math.ceil(-Math.log10(step) - 1e-9));
}
