import { execFileSync, spawnSync } from "node:child_process";
import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { pipeBody, writeBody } from "../../scripts/three-d/body.ts";
import { pipeDrop, pipeFlow } from "../../scripts/three-d/pipe.ts";
import type { RunLine } from "../../scripts/three-d/run-line.ts";

const compiler = spawnSync("g++", ["--version"]).status === 0;
if (!compiler)
  console.warn(
    "tests/three-d/pipe: no g++ on this machine, so the solver isn't built and the pipe isn't run",
  );

const DIAMETER = 10.5;
const LENGTH = 24;
const ACROSS = 12;

describe.skipIf(!compiler)("the solver in a straight round pipe, on a CPU", () => {
  const flow = pipeFlow(100, DIAMETER);
  const exact = pipeDrop(flow, DIAMETER, LENGTH);
  let folder: string;
  let line: RunLine;

  beforeAll(() => {
    folder = mkdtempSync(join(tmpdir(), "pipe-"));
    writeBody(join(folder, "pipe"), pipeBody(DIAMETER, LENGTH));
    const solver = join(folder, "solver");
    execFileSync("g++", [
      "-x",
      "c++",
      "-O2",
      "-march=native",
      "-fopenmp",
      "scripts/three-d/solver/main.cu",
      "-o",
      solver,
    ]);
    const keys = {
      ivc: flow,
      right: flow,
      dx: DIAMETER / ACROSS,
      peak: 0.1,
      settle: 2,
      least: 1,
      most: 1,
      tracers: 100,
    };
    const reported = Object.entries(keys).map(([key, value]) => `${key}=${value}`);
    // one thread: a few thousand cells are not worth a meeting of threads at each step
    const env = { ...process.env, OMP_NUM_THREADS: "1" };
    line = JSON.parse(
      execFileSync(solver, [join(folder, "pipe"), "pipe", ...reported], { env, stdio: "pipe" }).toString(),
    );
  }, 240_000);
  afterAll(() => rmSync(folder, { recursive: true, force: true }));

  test("loses what the Hagen-Poiseuille law gives, as far as 12 cells across can show", () => {
    expect(line.drop * 133.322387).toBeGreaterThan(0.98 * exact);
    expect(line.drop * 133.322387).toBeLessThan(1.08 * exact);
    expect(line.power / (exact * flow * 1e-3)).toBeCloseTo((line.drop * 133.322387) / exact, 1);
  });
  test("dissipates what it loses", () => {
    expect(line.dissipated / (exact * flow * 1e-3)).toBeGreaterThan(0.92);
    expect(line.dissipated / (exact * flow * 1e-3)).toBeLessThan(1.02);
  });
  test("lets through what comes in, as a parabola: two heads of the mean speed", () => {
    expect(-line.openings.ivc!.flow / flow).toBeCloseTo(1, 1);
    expect(line.openings.right!.flow / -line.openings.ivc!.flow).toBeCloseTo(1, 2);
    expect(line.openings.right!.kinetic).toBeGreaterThan(1.85);
    expect(line.openings.right!.kinetic).toBeLessThan(2.05);
  });
  test("refuses a key it does not know, and names those it does", () => {
    const bad = spawnSync(join(folder, "solver"), [join(folder, "pipe"), "pipe", "speed=1"]);
    expect(bad.status).toBe(1);
    expect(bad.stderr.toString()).toMatch(/'speed=1'.*allowed.*peak/);
  });
});
