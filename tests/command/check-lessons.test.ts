import { spawnSync } from "node:child_process";
import { expect, test } from "vitest";

const check = (...given: string[]) =>
  spawnSync(process.execPath, ["--import", "tsx", "src/command/check-lessons.ts", "--words", ...given], {
    encoding: "utf8",
  });

test("a file that is not there is told as a fault, and the exit says so", () => {
  const { stdout, stderr, status } = check("lessons/en/no-such-lesson.md");
  expect(stdout).toMatch(/no-such-lesson\.md:1: found no such file/);
  expect(stderr).toBe("");
  expect(status).toBe(1);
}, 60_000);

test("the kit's own lessons have no faults, each with its measures", () => {
  const { stdout, status } = check();
  expect(stdout.match(/^lessons\/en\/\S+: \d+ steps; Flesch-Kincaid .*; SMOG .*; LIX /gm)).toHaveLength(10);
  expect(stdout.match(/^lessons\/es\/\S+: .*INFLESZ /gm)).toHaveLength(10);
  expect(stdout).toMatch(/No faults\.\n$/);
  expect(status).toBe(0);
}, 60_000);
