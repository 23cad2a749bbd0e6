/** Vitest's or Playwright's JSON report, as far as it is read. */
export function slowest(report: object, count?: number): string[];
