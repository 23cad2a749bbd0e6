/** A field's own thread: listens between slices, works, and rests when it is ahead. */
import { fieldRunner } from "./field-runner.ts";
import { fromName } from "./first-words.ts";
import { turns } from "./turns.ts";
import type { ToField } from "./worker-messages.ts";

const runner = fieldRunner({
  clock: () => performance.now() / 1000,
  post: (message, transfer) => postMessage(message, { transfer }),
});
for (const message of fromName<ToField>(self.name)) runner.hear(message);
const wake = turns(runner.work);

self.addEventListener("message", ({ data }: MessageEvent<ToField>) => {
  runner.hear(data);
  wake();
});
