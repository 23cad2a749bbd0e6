/** The chain on a page: real workers, the page's clock, random numbers from the machine. The workers are inlined, so one file suffices. */

import type { SceneState } from "../state/scene-state.ts";
import { type ChainOptions, createChain } from "./chain.ts";
import CirculationWorker from "./circulation-worker.ts?worker&inline";
import type { Chain } from "./contract.ts";
import FieldWorker from "./field-worker.ts?worker&inline";
import { workerPort } from "./port.ts";

export type PageOptions = Pick<ChainOptions, "tracers" | "reducedMotion">;

/** A chain that runs in this page. */
export const startChain = (start: SceneState, options: PageOptions = {}): Chain =>
  createChain(start, {
    clock: () => performance.now() / 1000,
    random: Math.random,
    every: (seconds, call) => {
      const timer = setInterval(call, 1000 * seconds);
      return () => clearInterval(timer);
    },
    // One core is left to the page; more workers than this would wait for each other's memory.
    poolSize: Math.min(6, Math.max(2, navigator.hardwareConcurrency - 1)),
    startCirculation: () => workerPort(() => new CirculationWorker()),
    startField: () => workerPort(() => new FieldWorker()),
    ...options,
  });
