/** Pause and play: paused stays paused, and where nothing should move by itself, Play asks for motion. */
import { setView } from "../../state/edit.ts";
import type { Context } from "../setting.ts";

export const isMoving = ({ session, stillness }: Context): boolean =>
  !session.scene.value.view.paused && !stillness.value;

export function togglePlay(context: Context): void {
  const { session, stillness } = context;
  if (isMoving(context)) {
    session.edit("paused", setView({ paused: true }));
    return;
  }
  stillness.value = false;
  session.edit("paused", setView({ paused: false }));
}
