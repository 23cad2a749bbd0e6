/** A field's own thread: listens between slices, works, and rests when it is ahead. */
import { fieldRunner } from "./field-runner.ts";
import type { ToField } from "./worker-messages.ts";

const runner = fieldRunner({
  clock: () => performance.now() / 1000,
  post: (message, transfer) => postMessage(message, { transfer }),
});
const channel = new MessageChannel();

/** While it rests; 0 while it works. */
let timer = 0;

self.addEventListener("message", ({ data }: MessageEvent<ToField>) => {
  runner.hear(data);
  if (timer === 0) return;
  // What was sent together is heard together.
  clearTimeout(timer);
  timer = self.setTimeout(turn, 1);
});

/** A message to itself lets what has arrived be heard without a timer's four milliseconds. */
const turn = () => {
  const rest = runner.work();
  timer = rest > 0 ? self.setTimeout(turn, 1000 * rest) : 0;
  if (rest === 0) channel.port2.postMessage(null);
};
channel.port1.onmessage = turn;
turn();
