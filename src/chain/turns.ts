/** Lets a worker work in turns, between which it listens. */

/** Calls `work` again after the s of rest that it answers; the function returned ends a rest, because something was heard. */
export function turns(work: () => number | Promise<number>): () => void {
  const channel = new MessageChannel();
  /** While it rests; 0 while it works. */
  let timer = 0;
  /** A message to itself lets what has arrived be heard without a timer's four milliseconds. */
  const turn = async () => {
    timer = 0;
    const rest = await work();
    if (rest > 0) timer = self.setTimeout(take, 1000 * rest);
    else channel.port2.postMessage(null);
  };
  /** A refused promise would stay in the worker: as a fault of its own the page hears of it at once. */
  const take = () => {
    turn().catch((fault) => {
      self.setTimeout(() => {
        throw fault;
      });
    });
  };
  channel.port1.onmessage = take;
  take();
  return () => {
    if (timer === 0) return;
    // What was sent together is heard together.
    clearTimeout(timer);
    timer = self.setTimeout(take, 1);
  };
}
