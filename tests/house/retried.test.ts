import { spawnSync } from "node:child_process";
import { mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { expect, test } from "vitest";
import { retried } from "../../scripts/retried.mjs";
import { TOP } from "./sources.ts";

const SPEC = `import { expect, test } from "@playwright/test";
test("sound", () => {});
test("out of order", () => { throw new Error("made up"); });
test.describe("a group", () => {
  test("late once", async ({}, info) => { expect(info.retry).toBe(1); });
});
`;

test("a test that passes on its second try is named, one that passes or fails is not", () => {
  // Within the repository, so that the runner's package is found.
  mkdirSync(join(TOP, ".cache"), { recursive: true });
  const folder = mkdtempSync(join(TOP, ".cache", "retried-"));
  try {
    writeFileSync(join(folder, "trial.page.ts"), SPEC);
    writeFileSync(
      join(folder, "playwright.config.ts"),
      `export default { testDir: ".", testMatch: "*.page.ts", retries: 1, outputDir: "out", reporter: [["json", { outputFile: "report.json" }]] };`,
    );
    spawnSync(join(TOP, "node_modules/.bin/playwright"), ["test", "-c", folder], { cwd: TOP });
    const report = JSON.parse(readFileSync(join(folder, "report.json"), "utf8"));
    expect(report.stats).toMatchObject({ expected: 1, unexpected: 1, flaky: 1 });
    expect(retried(report)).toEqual(["trial.page.ts:5 late once"]);
  } finally {
    rmSync(folder, { recursive: true });
  }
}, 60_000);
