/** The chain on a page: real workers, the page's clock, random numbers from the machine. The workers are inlined, so one file suffices. */

import "./packed-near.ts";
import type { SceneState } from "../state/scene-state.ts";
import { type ChainOptions, createChain } from "./chain.ts";
import CirculationWorker from "./circulation-worker.ts?worker&inline";
import type { Chain } from "./contract.ts";
import { firstBlood } from "./first-blood.ts";
import { openingForeseen, openingStart } from "./opening-start.ts";
import { givingWay, type Named, namedPort } from "./port.ts";

export type PageOptions = Pick<ChainOptions, "tracers" | "reducedMotion">;

/** ms after which a browser that has not said whether there is a GPU counts as one without */
const MAX_WAIT = 20_000;

/** Starts workers that compute on a GPU; what that takes is fetched only where there is one. */
async function gpuFields() {
  const adapter = await navigator.gpu?.requestAdapter();
  return adapter && (await import("./gpu-field.ts")).gpuFields(adapter);
}

/** A chain that runs in this page. */
export const startChain = (start: SceneState, options: PageOptions = {}): Chain => {
  const late = new Promise<null>((resolve) => setTimeout(resolve, MAX_WAIT, null));
  const onGpu = Promise.race([gpuFields(), late]).catch(() => null);
  let known = false;
  void onGpu.then(() => {
    known = true;
  });
  const onProcessor = import("./processor-field.ts");
  const processor = async () => (await onProcessor).processorField;
  const best = async (): Promise<Named> => {
    const [gpu, other] = await Promise.all([onGpu, processor()]);
    return (name) => gpu?.(name) ?? other(name);
  };
  const blood = firstBlood(start, openingForeseen, options.reducedMotion?.() ?? false);
  const named: Named = (name) => new CirculationWorker({ name });
  let solver: Named | Promise<Named> = blood.seen ? blood.seen.then(() => named) : named;
  void blood.seen?.then(() => {
    solver = named;
  });
  const chain = createChain(start, {
    clock: () => performance.now() / 1000,
    random: Math.random,
    every: (seconds, call) => {
      const timer = setInterval(call, 1000 * seconds);
      return () => clearInterval(timer);
    },
    // One core is left to the page; more workers than this would wait for each other's memory.
    poolSize: Math.min(6, Math.max(2, navigator.hardwareConcurrency - 1)),
    firstStart: openingStart,
    foresee: openingForeseen,
    startCirculation: () => namedPort(solver),
    // A browser takes long to say whether there is a GPU: blood is not to wait for that.
    startField: () => (known ? namedPort(best()) : givingWay(namedPort(processor()), onGpu)),
    ...options,
  });
  return {
    ...chain,
    frame() {
      const frame = chain.frame();
      blood.note(frame);
      return frame;
    },
  };
};
