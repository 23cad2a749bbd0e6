/** Pause and play: paused stays paused, and where nothing should move by itself, Play asks for motion. */
import { setView } from "../../../state/edit.ts";
import type { Context } from "../mode.ts";

export const isMoving = ({ session, reducedMotion }: Context): boolean =>
  !session.scene.value.view.paused && session.scene.value.view.moment === undefined && !reducedMotion.value;

export function togglePlay(context: Context): void {
  const { session, reducedMotion } = context;
  if (isMoving(context)) {
    session.edit("paused", setView({ paused: true }));
    return;
  }
  reducedMotion.value = false;
  session.edit("paused", setView({ paused: false, moment: undefined }));
}
