/** Waits until a scene is worth a picture. */
import { hasPlane } from "../../sim/parameters/request.ts";
import { paneRequest } from "../../state/scene-state.ts";
import type { Context } from "./mode.ts";

/** s: a flow that has not settled by then is drawn as it is */
const PATIENCE = 12;

/**
 * Resolves when the answer is there, and the flow or the sweep that the scene shows, if any, has settled or is complete.
 * @param flowPatience s: how long a flow gets after the answer
 */
export async function settled(
  { session, stage }: Context,
  cancel: AbortSignal,
  flowPatience = PATIENCE,
): Promise<void> {
  const { chain } = session;
  const until = performance.now() + PATIENCE * 1000;
  let answeredAt = Number.POSITIVE_INFINITY;
  const ready = () => {
    const frame = stage.frame();
    if (chain.solving.peek() || frame?.state !== chain.scene.peek()) return false;
    answeredAt = Math.min(answeredAt, performance.now());
    if ((frame.sweep?.progress ?? 1) === 1 && performance.now() > answeredAt + flowPatience * 1000)
      return true;
    const flows =
      frame.state.scene === "pathway"
        ? chain.readings.peek().filter((_, i) => hasPlane(paneRequest(frame.state, i).stage))
        : [];
    return flows.every((reading) => reading?.settled ?? false) && (frame.sweep?.progress ?? 1) === 1;
  };
  while (!ready() && performance.now() < until && !cancel.aborted)
    await new Promise((resolve) => setTimeout(resolve, 100));
}
