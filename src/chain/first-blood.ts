/** Waits until blood that is foreseen has been seen to move: on two processors the solver would keep it waiting. */
import type { SceneState } from "../state/scene-state.ts";
import type { Foresee } from "./foreseen.ts";
import type { Frame } from "./frame.ts";

/** Frames of blood in which it is seen to move. */
const MOVED = 2;
/** ms after which nothing waits any longer */
const PATIENCE = 1500;

export interface FirstBlood {
  /** Undefined where nothing is foreseen to move. */
  readonly seen: Promise<void> | undefined;
  note(frame: Frame): void;
}

/** @param still nothing is to move (the reader's setting) */
export function firstBlood(start: SceneState, foresee: Foresee, still: boolean): FirstBlood {
  const { scene, request, beside, view } = start;
  const moves = scene === "pathway" && beside.length === 0 && !view.paused && view.moment === undefined;
  let bled = 0;
  let open = () => {};
  const seen =
    moves && !still && foresee(request)
      ? new Promise<void>((resolve) => {
          open = resolve;
          setTimeout(resolve, PATIENCE);
        })
      : undefined;
  return {
    seen,
    note({ state, panes }) {
      if (panes.some(({ tracers }) => tracers)) bled++;
      // Whoever has changed something waits for its answer.
      if (bled >= MOVED || state.request !== start.request) open();
    },
  };
}
