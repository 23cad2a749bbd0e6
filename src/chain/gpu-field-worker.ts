/** A field's own thread on a computer with a graphics chip. */
import { type Chip, openChip } from "../sim/flow-solver/gpu/chip.ts";
import { chipRunner } from "./chip-runner.ts";
import { fieldRunner, type RunnerOptions } from "./field-runner.ts";
import { turns } from "./turns.ts";
import type { ToField } from "./worker-messages.ts";

/** ms until the processor computes if the chip cannot be opened */
const PATIENCE = 3000;

const options: RunnerOptions = {
  clock: () => performance.now() / 1000,
  post: (message, transfer) => postMessage(message, { transfer }),
};
const early: ToField[] = [];
let hear = (message: ToField): void => {
  early.push(message);
};
self.addEventListener("message", ({ data }: MessageEvent<ToField>) => hear(data));

async function opened(): Promise<Chip> {
  const adapter = await navigator.gpu.requestAdapter({ powerPreference: "high-performance" });
  if (!adapter) throw new Error("the graphics chip is gone");
  return openChip(await adapter.requestDevice());
}

const late = new Promise<never>((_, refuse) => {
  setTimeout(refuse, PATIENCE);
});

// One that opens later stays unused, and says nothing.
void Promise.race([opened(), late])
  .then(
    (chip) => chipRunner(options, chip),
    () => {
      options.post({ kind: "chip", fate: "lost" }, []);
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
