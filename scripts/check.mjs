// One command checks everything. Each stage runs even when an earlier one failed; the last line counts passed and failed.
// `npm test -- types lint` runs only those stages.
import { spawn } from "node:child_process";
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

/** Runs one command to its end. Beside another one it speaks once it has ended, or their lines would mix. */
const ended = (command, args, alone) =>
  new Promise((resolve) => {
    const child = spawn(command, args, { stdio: alone ? "inherit" : ["ignore", "pipe", "pipe"] });
    const said = [];
    for (const stream of [child.stdout, child.stderr]) stream?.on("data", (part) => said.push(part));
    child.on("error", ({ message }) => said.push(Buffer.from(`${message}\n`)));
    child.on("close", (status) => {
      process.stdout.write(Buffer.concat(said));
      resolve(status);
    });
  });

async function run(name, [command, args, file, runner], alone) {
  if (file) rmSync(report(file), { force: true });
  const started = Date.now();
  const status = await ended(command, args, alone);
  const seconds = ((Date.now() - started) / 1000).toFixed(1);
  const json = file && existsSync(report(file)) ? JSON.parse(readFileSync(report(file), "utf8")) : undefined;
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

async function runInTurn(names, alone) {
  for (const name of names) {
    if (asked.length && !asked.includes(name)) continue;
    for (const step of stages[name]) await run(name, step, alone);
  }
}

// Each of these takes one core; the others take both.
await Promise.all([runInTurn(["types", "lint"], false), runInTurn(["lessons", "build"], false)]);
await runInTurn(["unit", "pages"], true);
// Passed only on a further try: worth a look before it fails.
if (again.length > 0)
  console.log([`${again.length} retried`, ...again.map((title) => `  ${title}`)].join("\n"));
console.log(`${total.passed} passed, ${total.failed} failed, ${total.skipped} skipped`);
process.exit(total.failed ? 1 : 0);
