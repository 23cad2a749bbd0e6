/** A worker's turns, and the worker that first waits for a GPU. */
import { afterEach, beforeEach, expect, test, vi } from "vitest";
import type { Gpu } from "../../src/sim/flow-solver/gpu/gpu.ts";

const opening = vi.hoisted(() => ({ done: (_: Gpu) => {} }));
vi.mock("../../src/sim/flow-solver/gpu/gpu.ts", () => ({
  openGpu: () =>
    new Promise<Gpu>((done) => {
      opening.done = done;
    }),
}));

beforeEach(() => {
  vi.useFakeTimers();
  vi.stubGlobal("self", { name: "", addEventListener: vi.fn(), setTimeout });
});
afterEach(() => {
  vi.useRealTimers();
  vi.unstubAllGlobals();
});

test("a turn that fails is a fault of the worker, not a promise that nobody hears", async () => {
  const { turns } = await import("../../src/chain/turns.ts");
  turns(async () => {
    throw new Error("no memory");
  });
  await Promise.resolve();
  await Promise.resolve();
  await Promise.resolve();
  expect(() => vi.runAllTimers()).toThrow("no memory");
});

test("a GPU that opens after the processor has begun does not say that it computes", async () => {
  const said: unknown[] = [];
  vi.stubGlobal("postMessage", (message: unknown) => said.push(message));
  vi.stubGlobal("navigator", { gpu: { requestAdapter: async () => ({ requestDevice: async () => ({}) }) } });
  await import("../../src/chain/gpu-field-worker.ts");
  await vi.advanceTimersByTimeAsync(3000);
  opening.done({ load: vi.fn() });
  await vi.advanceTimersByTimeAsync(100);
  expect(said).toContainEqual({ kind: "gpu", status: "lost" });
  expect(said).not.toContainEqual({ kind: "gpu", status: "computes" });
});
