import { spawnSync } from "node:child_process";
import { cpSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { expect, test } from "vitest";
import { readLessonFiles } from "../../src/cli/lesson-files.ts";
import { describeFault } from "../../src/sim/faults.ts";

const check = (...given: string[]) =>
  spawnSync(process.execPath, ["--import", "tsx", "src/cli/check-lessons.ts", "--words", ...given], {
    encoding: "utf8",
  });

test("a missing file is reported as a fault, and in the exit code", () => {
  const { stdout, stderr, status } = check("lessons/en/no-such-lesson.md");
  expect(stdout).toMatch(/no-such-lesson\.md:1: found no such file/);
  expect(stderr).toBe("");
  expect(status).toBe(1);
}, 60_000);

test("the kit's own lessons have no faults, each with its measures", () => {
  const { stdout, status } = check();
  const count = (language: string) =>
    readdirSync(`lessons/${language}`).filter((file) => /^\d\d-.*\.md$/.test(file)).length;
  expect(stdout.match(/^lessons\/en\/\S+: \d+ steps; Flesch-Kincaid .*; SMOG .*; LIX /gm)).toHaveLength(
    count("en"),
  );
  expect(stdout.match(/^lessons\/es\/\S+: .*INFLESZ /gm)).toHaveLength(count("es"));
  expect(stdout).toMatch(/No faults\.\n$/);
  expect(status).toBe(0);
}, 60_000);

test("two lessons of a course with the same number are reported, with file, line and the other lesson", () => {
  const folder = mkdtempSync(join(tmpdir(), "course-"));
  try {
    cpSync("lessons", folder, { recursive: true });
    const file = join(folder, "en", "03-pathways.md");
    writeFileSync(file, readFileSync(file, "utf8").replace("number: 3", "number: 2"));
    const reported = readLessonFiles(folder).faults.map(describeFault);
    expect(reported.join("\n")).toMatch(/en\/03-pathways\.md:3: found number: 2; .*en\/02-steps\.md/);
  } finally {
    rmSync(folder, { recursive: true });
  }
});
