/** Playwright's JSON report, as far as it is read. */
export function retried(report: object): string[];
