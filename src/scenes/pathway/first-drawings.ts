/** What the first drawings of a scene leave for later, so that blood is seen to move at once. */
import type { Frame } from "../../chain/frame.ts";

/** Drawings of blood after which it has been seen to move. */
const SEEN = 3;
/** s of drawings without blood after which the rest waits no longer */
const PATIENCE = 1.5;

export function firstDrawings() {
  let seen = 0;
  let waited = 0;
  return {
    /** Whether this drawing is one of the first; a picture that stands still has none. */
    next({ panes, still }: Frame, elapsed: number): boolean {
      if (still || !Number.isFinite(elapsed)) seen = SEEN;
      const flows = panes.some(({ tracers }) => tracers !== null);
      waited += elapsed;
      return seen < SEEN && (flows ? ++seen < SEEN : waited < PATIENCE);
    },
  };
}
