/** Waits until a scene is worth a picture. */
import type { Session } from "../session.ts";

/** s: a flow that has not settled by then is drawn as it is */
const PATIENCE = 12;

/** Resolves when the answer is there and the flow, if one is shown, has settled. */
export async function settled({ chain }: Session, cancel: AbortSignal): Promise<void> {
  const until = performance.now() + PATIENCE * 1000;
  const ready = () => {
    if (chain.solving.peek()) return false;
    return chain.readings.peek().every((reading) => reading?.settled ?? false);
  };
  while (!ready() && performance.now() < until && !cancel.aborted)
    await new Promise((resolve) => setTimeout(resolve, 100));
}
