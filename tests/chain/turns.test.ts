/** A worker's turns, and the worker that first waits for a graphics chip. */
import { afterEach, beforeEach, expect, test, vi } from "vitest";
import type { Chip } from "../../src/sim/flow-solver/gpu/chip.ts";

const opening = vi.hoisted(() => ({ done: (_: Chip) => {} }));
vi.mock("../../src/sim/flow-solver/gpu/chip.ts", () => ({
  openChip: () =>
    new Promise<Chip>((done) => {
      opening.done = done;
    }),
}));

beforeEach(() => {
  vi.useFakeTimers();
  vi.stubGlobal("self", { addEventListener: vi.fn(), setTimeout });
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

test("a chip that opens after the processor has begun does not say that it computes", async () => {
  const said: unknown[] = [];
  vi.stubGlobal("postMessage", (message: unknown) => said.push(message));
  vi.stubGlobal("navigator", { gpu: { requestAdapter: async () => ({ requestDevice: async () => ({}) }) } });
  await import("../../src/chain/chip-field-worker.ts");
  await vi.advanceTimersByTimeAsync(3000);
  opening.done({ load: vi.fn() });
  await vi.advanceTimersByTimeAsync(100);
  expect(said).toContainEqual({ kind: "chip", fate: "lost" });
  expect(said).not.toContainEqual({ kind: "chip", fate: "computes" });
});
