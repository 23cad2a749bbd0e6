/** Waits until a scene is worth a picture. */
import type { FlowMoment } from "../../../chain/frame.ts";
import { hasPlane } from "../../../sim/parameters/request.ts";
import { paneRequest } from "../../../state/scene-state.ts";
import type { Context } from "../mode.ts";

/** s: a flow that has not settled by then is drawn as it is */
const PATIENCE = 12;
/** s: the same where it only has to have taken shape, or is too slow to settle in time */
const SHORT_PATIENCE = 3;
/** s of its own time in which a flow can settle at the soonest: two breaths that agree */
const SETTLES_AFTER = 6;
/** s after an answer up to which what is read of the flow may be that of the flow before */
const READ_ANEW = 0.4;

/**
 * Resolves when the answer is there, and the flow or the sweep that the scene shows, if any, has settled or is complete.
 * @param shape s of the flow's own time since its walls and inflow changed that are enough where no number is measured in it
 */
export async function settled(
  { session, stage }: Context,
  cancel: AbortSignal,
  shape?: number,
): Promise<void> {
  const { chain } = session;
  const began = performance.now();
  let answeredAt = Number.POSITIVE_INFINITY;
  let first: readonly (FlowMoment | null)[] = [];
  const ready = () => {
    const frame = stage.frame();
    if (!frame || chain.solving.peek() || frame.state !== chain.scene.peek()) return false;
    // Drawn before the answer came: it shows the numbers of the state before.
    const answers = chain.circulations.peek();
    if (frame.panes.some(({ circulation }, pane) => circulation !== answers[pane])) return false;
    if ((frame.sweep?.progress ?? 1) < 1) return false;
    if (frame.state.scene === "exchange" && frame.panes.some(({ exchange }) => !exchange)) return false;
    if (answeredAt === Number.POSITIVE_INFINITY) first = chain.moments();
    answeredAt = Math.min(answeredAt, performance.now());
    if (frame.state.scene !== "pathway") return true;
    const waited = (performance.now() - answeredAt) / 1000;
    if (waited < READ_ANEW) return false;
    const moments = chain.moments();
    const ran = moments.map((moment, pane) => moment && ranFor(moment, first[pane] ?? null));
    if (waited > SHORT_PATIENCE && (shape !== undefined || tooSlow(ran, waited))) return true;
    return moments.every(
      (moment, pane) =>
        !hasPlane(paneRequest(frame.state, pane).stage) ||
        chain.readings.peek()[pane]?.settled ||
        (shape !== undefined && moment !== null && moment.unchanged >= shape),
    );
  };
  while (!ready() && performance.now() < began + PATIENCE * 1000 && !cancel.aborted)
    await new Promise((resolve) => setTimeout(resolve, 50));
}

/** Whether one of the flows, at its pace so far, will not settle while anyone waits. */
const tooSlow = (ran: readonly (number | null)[], waited: number): boolean =>
  ran.some((seconds) => seconds !== null && (seconds / waited) * PATIENCE < SETTLES_AFTER);

/** s of its own time since that moment, or since it began again from rest. */
const ranFor = (now: FlowMoment, since: FlowMoment | null): number =>
  now.time - (since && since.time <= now.time ? since.time : 0);
