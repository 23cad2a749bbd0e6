/** What the first drawings of a scene leave for later, so that blood is seen to move at once. */
import type { Frame } from "../../chain/frame.ts";
import type { Viewport } from "../scene.ts";
import { isPumped } from "./named.ts";

/** Drawings of blood after which it has been seen to move. */
const SEEN = 3;
/** s of drawings after which the rest waits no longer */
const PATIENCE = 1.5;
/** The same where blood moves that is foreseen: its answer follows. */
const UNSOLVED = 4;

export function firstDrawings() {
  let seen = 0;
  let waited = 0;
  return {
    /** Whether this drawing is one of the first; a picture that stands still has none, nor one that is whole with its blood. */
    next({ panes, still }: Frame, { elapsed, mute }: Pick<Viewport, "elapsed" | "mute">): boolean {
      waited += elapsed;
      if (still || waited >= PATIENCE || panes.every(isPumped)) seen = SEEN;
      else if (panes.some(({ tracers }) => tracers !== null)) seen++;
      const foreseen = panes.some((pane) => pane.foreseen && pane.tracers);
      // What lies around is painted once, when the blood is solved.
      return seen < SEEN || mute === true || (foreseen && waited < UNSOLVED);
    },
  };
}
