import { relative } from "node:path";

/** s by file of a Playwright suite and those below it; every try counts. */
const pageTimes = ({ specs = [], suites = [] }) => [
  ...specs.flatMap(({ file, tests }) =>
    tests.flatMap(({ results }) => results.map(({ duration }) => [file, duration / 1000])),
  ),
  ...suites.flatMap(pageTimes),
];

const unitTimes = ({ testResults }) =>
  testResults.map(({ name, startTime, endTime }) => [relative("", name), (endTime - startTime) / 1000]);

/** Where a stage's time went, from the runner's own JSON report: its slowest files, each with its seconds, greatest first. */
export function slowest(report, count = 5) {
  const seconds = new Map();
  for (const [file, each] of report.testResults ? unitTimes(report) : pageTimes(report))
    seconds.set(file, (seconds.get(file) ?? 0) + each);
  return [...seconds]
    .sort(([, a], [, b]) => b - a)
    .slice(0, count)
    .map(([file, each]) => `${each.toFixed(1)} s ${file}`);
}
