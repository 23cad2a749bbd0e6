/** The chain on a page: real workers, the page's clock, random numbers from the machine. */

import type { SceneState } from "../state/scene-state.ts";
import { type ChainOptions, createChain } from "./chain.ts";
import CirculationWorker from "./circulation-worker.ts?worker";
import type { Chain } from "./contract.ts";
import { earlyWorker } from "./early-workers.ts";
import FieldWorker from "./field-worker.ts?worker";
import { openingStart } from "./opening-start.ts";
import { workerPort } from "./port.ts";

export type PageOptions = Pick<ChainOptions, "tracers" | "reducedMotion">;

/** Starts workers that compute on a GPU; what that takes is fetched only where there is one. */
async function gpuFields() {
  const adapter = await navigator.gpu?.requestAdapter();
  return adapter && (await import("./gpu-field.ts")).gpuFields(adapter);
}

/** A chain that runs in this page. */
export const startChain = (start: SceneState, options: PageOptions = {}): Chain => {
  const onGpu = gpuFields().catch(() => null);
  void onGpu.then((start) => start && earlyWorker("field")?.terminate());
  return createChain(start, {
    clock: () => performance.now() / 1000,
    random: Math.random,
    every: (seconds, call) => {
      const timer = setInterval(call, 1000 * seconds);
      return () => clearInterval(timer);
    },
    // One core is left to the page; more workers than this would wait for each other's memory.
    poolSize: Math.min(6, Math.max(2, navigator.hardwareConcurrency - 1)),
    firstStart: openingStart,
    startCirculation: () => workerPort(() => earlyWorker("circulation") ?? new CirculationWorker()),
    startField: () => workerPort(async () => (await onGpu)?.() ?? earlyWorker("field") ?? new FieldWorker()),
    ...options,
  });
};
