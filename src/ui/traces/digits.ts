/** Decimals with which all marks of an axis are exact, at most six. */
export function digitsFor(marks: readonly number[]): number {
  for (let digits = 0; digits < 6; digits++) {
    const scale = 10 ** digits;
    if (marks.every((mark) => Math.abs(Math.round(mark * scale) - mark * scale) < 1e-6)) return digits;
  }
  return 6;
}
