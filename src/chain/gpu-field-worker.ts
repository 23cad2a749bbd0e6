/** A field's own thread on a computer with a GPU. */
import { type Gpu, openGpu } from "../sim/flow-solver/gpu/gpu.ts";
import { fieldRunner, type RunnerOptions } from "./field-runner.ts";
import { fromName } from "./first-words.ts";
import { gpuRunner } from "./gpu-runner.ts";
import { turns } from "./turns.ts";
import type { ToField } from "./worker-messages.ts";

/** ms until the processor computes if the GPU cannot be opened */
const PATIENCE = 3000;

const options: RunnerOptions = {
  clock: () => performance.now() / 1000,
  post: (message, transfer) => postMessage(message, { transfer }),
};
const early: ToField[] = [...fromName<ToField>(self.name)];
let hear = (message: ToField): void => {
  early.push(message);
};
self.addEventListener("message", ({ data }: MessageEvent<ToField>) => hear(data));

async function opened(): Promise<Gpu> {
  const adapter = await navigator.gpu.requestAdapter({ powerPreference: "high-performance" });
  if (!adapter) throw new Error("the GPU is gone");
  return openGpu(await adapter.requestDevice());
}

const late = new Promise<never>((_, refuse) => {
  setTimeout(refuse, PATIENCE);
});

// One that opens later stays unused, and says nothing.
void Promise.race([opened(), late])
  .then(
    (gpu) => gpuRunner(options, gpu),
    () => {
      options.post({ kind: "gpu", status: "lost" }, []);
      return fieldRunner(options);
    },
  )
  .then((runner) => {
    const wake = turns(() => runner.work());
    hear = (message) => {
      runner.hear(message);
      wake();
    };
    early.forEach(hear);
  });
