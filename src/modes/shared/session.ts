/** The chain together with its history: what every control, key and finger edits through. */
import { computed, type ReadonlySignal, signal } from "@preact/signals";
import type { Chain } from "../../chain/contract.ts";
import type { Before } from "../../chain/frame.ts";
import { shownBefore } from "../../chain/shown-before.ts";
import { NO_HISTORY, redo, remember, settle, undo } from "../../state/history.ts";
import type { SceneState } from "../../state/scene-state.ts";
import type { Editing } from "../../ui/editing.ts";

export interface Session extends Editing {
  readonly chain: Chain;
  /** Shows a scene that is nobody's edit (a lesson's step, a link): the history starts empty. */
  show(state: SceneState): void;
  undo(): void;
  redo(): void;
  readonly canUndo: ReadonlySignal<boolean>;
  readonly canRedo: ReadonlySignal<boolean>;
  /** Rises with each edit by a person, so that its answer can be announced. */
  readonly edits: ReadonlySignal<number>;
  /** What each pane showed when the last change of its request began; null when there is nothing to compare with. */
  readonly before: ReadonlySignal<readonly Before[] | null>;
  /** Ends the comparison with what was before. */
  forget(): void;
}

/** Edits of the moment: nobody wants them back. */
const PASSING = ["paused", "moment", "dye", "focus", "divider"];

export function createSession(chain: Chain): Session {
  const history = signal(NO_HISTORY);
  const edits = signal(0);
  const before = signal<readonly Before[] | null>(null);
  const begin = (from: SceneState, to: SceneState) => {
    if (JSON.stringify(from.request) !== JSON.stringify(to.request))
      before.value = shownBefore(chain.circulations.peek());
  };
  const move = (step: typeof undo) => () => {
    const moved = step(history.value, chain.scene.value);
    if (!moved) return;
    history.value = moved.history;
    begin(chain.scene.value, moved.state);
    chain.scene.value = moved.state;
    edits.value++;
  };
  return {
    chain,
    scene: chain.scene,
    edit(subject, change) {
      const earlier = chain.scene.value;
      const after = change(earlier);
      if (after === earlier) return;
      if (!PASSING.includes(subject)) {
        const known = history.value;
        history.value = remember(known, earlier, subject);
        // A drag is one change, whatever lies between its ends.
        if (history.value.past !== known.past) begin(earlier, after);
        edits.value++;
      }
      chain.scene.value = after;
    },
    settle() {
      history.value = settle(history.value);
    },
    show(state) {
      history.value = NO_HISTORY;
      before.value = null;
      chain.scene.value = state;
    },
    undo: move(undo),
    redo: move(redo),
    canUndo: computed(() => history.value.past.length > 0),
    canRedo: computed(() => history.value.future.length > 0),
    edits,
    before,
    forget() {
      before.value = null;
    },
  };
}
