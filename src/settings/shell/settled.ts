/** Waits until a scene is worth a picture. */
import type { Session } from "../session.ts";

/** s: a flow that has not settled by then is drawn as it is */
const PATIENCE = 12;

/** Resolves when the answer is there, and the flow or the sweep that the scene shows, if any, has settled or is complete. */
export async function settled({ chain }: Session, cancel: AbortSignal): Promise<void> {
  const until = performance.now() + PATIENCE * 1000;
  const ready = () => {
    if (chain.solving.peek()) return false;
    const flows = chain.scene.peek().scene === "pathway" ? chain.readings.peek() : [];
    return flows.every((reading) => reading?.settled ?? false) && (chain.frame().sweep?.progress ?? 1) === 1;
  };
  while (!ready() && performance.now() < until && !cancel.aborted)
    await new Promise((resolve) => setTimeout(resolve, 100));
}
