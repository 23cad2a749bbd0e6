// One command checks everything. Each stage runs even when an earlier one failed; the last line counts passed and failed.
// `npm test -- types lint` runs only those stages.
import { spawnSync } from "node:child_process";
import { existsSync, mkdirSync, readFileSync, rmSync } from "node:fs";
import { retried } from "./retried.mjs";
import { slowest } from "./slowest.mjs";

const bin = (name) => `node_modules/.bin/${name}`;
const report = (name) => `.cache/${name}.json`;

/** Counts from a runner's own JSON report; undefined when it wrote none. */
const counts = {
  vitest: (json) => ({
    passed: json.numPassedTests,
    failed: json.numFailedTests + json.numFailedTestSuites * (json.numFailedTests ? 0 : 1),
    skipped: json.numPendingTests,
  }),
  playwright: ({ stats }) => ({
    passed: stats.expected + stats.flaky,
    failed: stats.unexpected,
    skipped: stats.skipped,
  }),
};

const stages = {
  types: [
    [bin("tsc"), ["--noEmit", "-p", "tsconfig.json"]],
    [bin("tsc"), ["--noEmit", "-p", "src/sim/tsconfig.json"]],
  ],
  lint: [
    [bin("biome"), ["ci", "."]],
    [bin("knip"), ["--no-progress"]],
  ],
  unit: [
    [
      bin("vitest"),
      ["run", "--reporter=default", "--reporter=json", `--outputFile.json=${report("unit")}`],
      "unit",
      "vitest",
    ],
  ],
  lessons: [[bin("tsx"), ["src/cli/check-lessons.ts"]]],
  build: [
    [bin("vite"), ["build"]],
    [bin("vite"), ["build", "--mode", "single"]],
  ],
  pages: [[bin("playwright"), ["test"], "pages", "playwright"]],
};

const asked = process.argv.slice(2);
const unknown = asked.filter((name) => !(name in stages));
if (unknown.length) {
  console.error(`unknown stage: ${unknown.join(", ")}; allowed: ${Object.keys(stages).join(", ")}`);
  process.exit(2);
}

mkdirSync(".cache", { recursive: true });
const total = { passed: 0, failed: 0, skipped: 0 };
const again = [];
for (const [name, steps] of Object.entries(stages)) {
  if (asked.length && !asked.includes(name)) continue;
  for (const [command, args, file, runner] of steps) {
    if (file) rmSync(report(file), { force: true });
    const started = Date.now();
    const { status } = spawnSync(command, args, { stdio: "inherit" });
    const seconds = ((Date.now() - started) / 1000).toFixed(1);
    const json =
      file && existsSync(report(file)) ? JSON.parse(readFileSync(report(file), "utf8")) : undefined;
    if (json && runner === "playwright") again.push(...retried(json));
    const found = json && counts[runner](json);
    const result = found ?? { passed: status === 0 ? 1 : 0, failed: status === 0 ? 0 : 1, skipped: 0 };
    if (status !== 0 && result.failed === 0) result.failed = 1;
    for (const key of Object.keys(total)) total[key] += result[key];
    console.log(
      `[${name}] ${status === 0 ? "passed" : "FAILED"} in ${seconds} s: ${command.split("/").pop()} ${args[0] ?? ""}`,
    );
    if (json)
      console.log(
        slowest(json)
          .map((line) => `  ${line}`)
          .join("\n"),
      );
  }
}
// Passed only on a further try: worth a look before it fails.
if (again.length > 0)
  console.log([`${again.length} retried`, ...again.map((title) => `  ${title}`)].join("\n"));
console.log(`${total.passed} passed, ${total.failed} failed, ${total.skipped} skipped`);
process.exit(total.failed ? 1 : 0);
