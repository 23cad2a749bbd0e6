/** Waits until a scene is worth a picture. */
import { hasPlane } from "../../sim/parameters/request.ts";
import { paneRequest } from "../../state/scene-state.ts";
import type { Context } from "./mode.ts";

/** s: a flow that has not settled by then is drawn as it is */
const PATIENCE = 12;

/** Resolves when the answer is there, and the flow or the sweep that the scene shows, if any, has settled or is complete. */
export async function settled({ session, stage }: Context, cancel: AbortSignal): Promise<void> {
  const { chain } = session;
  const until = performance.now() + PATIENCE * 1000;
  const ready = () => {
    const frame = stage.frame();
    if (chain.solving.peek() || frame?.state !== chain.scene.peek()) return false;
    const flows =
      frame.state.scene === "pathway"
        ? chain.readings.peek().filter((_, i) => hasPlane(paneRequest(frame.state, i).stage))
        : [];
    return flows.every((reading) => reading?.settled ?? false) && (frame.sweep?.progress ?? 1) === 1;
  };
  while (!ready() && performance.now() < until && !cancel.aborted)
    await new Promise((resolve) => setTimeout(resolve, 100));
}
