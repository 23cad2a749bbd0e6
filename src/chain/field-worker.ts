/** A field's own thread: listens between slices, works, and rests when it is ahead. */
import { fieldRunner } from "./field-runner.ts";
import type { ToField } from "./worker-messages.ts";

const runner = fieldRunner({
  clock: () => performance.now() / 1000,
  post: (message, transfer) => postMessage(message, { transfer }),
});
const channel = new MessageChannel();

self.addEventListener("message", ({ data }: MessageEvent<ToField>) => runner.hear(data));

/** A message to itself lets what has arrived be heard without a timer's four milliseconds. */
const turn = () => {
  const rest = runner.work();
  if (rest > 0) setTimeout(turn, 1000 * rest);
  else channel.port2.postMessage(null);
};
channel.port1.onmessage = turn;
turn();
