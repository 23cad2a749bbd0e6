import { execFileSync } from "node:child_process";
import { beforeAll, describe, expect, test } from "vitest";
import { PLANES } from "./planes.ts";
import { gpuEnvironment, noGpu } from "./software-gpu.ts";

const missing = noGpu();
const found: {
  name: string;
  agreement: Record<string, number>;
  pushed: number;
  loss: { said: string; same: boolean };
} = { name: "", agreement: {}, pushed: 0, loss: { said: "", same: false } };

describe.skipIf(missing)(`the kernel on a GPU${missing ? ` (skipped: ${missing})` : ""}`, () => {
  beforeAll(() => {
    const said = execFileSync("node_modules/.bin/tsx", ["tests/sim/flow-solver/gpu-trial.ts"], {
      encoding: "utf8",
      env: gpuEnvironment(),
    });
    Object.assign(found, JSON.parse(said.trim().split("\n").pop()!));
  }, 120_000);

  test.each(PLANES.map(([name]) => name))("%s: within 5e-6 of the plain time step's flow", (name) => {
    expect(found.agreement[name]).toBeGreaterThan(1e-9);
    expect(found.agreement[name]).toBeLessThan(5e-6);
  });

  test("openings know the same at the end of a batch", () => {
    const openings = Object.entries(found.agreement).filter(([name]) => name.includes("opening"));
    expect(openings.length).toBeGreaterThan(12);
    for (const [, difference] of openings) expect(difference).toBeLessThan(1e-5);
  });

  test("pushes far below a velocity's rounding add up, so that a slow approach to the steady state is not lost", () => {
    expect(Math.fround(1 + 2 ** -27)).toBe(1);
    expect(found.pushed).toBe(1 + 1024 * 2 ** -27);
  });

  test("a lost GPU refuses the next batch, and the flow stays as it was", () => {
    expect(found.loss.said).toContain("GPU");
    expect(found.loss.same).toBe(true);
  });
});
