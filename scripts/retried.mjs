/** Titles of the tests that passed only on a further try, from Playwright's own JSON report: each with its file and line. */
export function retried({ suites = [] }) {
  return suites.flatMap((suite) => [
    ...(suite.specs ?? [])
      .filter(({ tests }) => tests.some(({ status }) => status === "flaky"))
      .map(({ file, line, title }) => `${file}:${line} ${title}`),
    ...retried(suite),
  ]);
}
