/** The chain together with its history: what every control, key and finger edits through. */
import { computed, type ReadonlySignal, signal } from "@preact/signals";
import type { Chain } from "../../chain/contract.ts";
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
}

/** Edits of the moment: nobody wants them back. */
const PASSING = ["paused", "dye", "focus"];

export function createSession(chain: Chain): Session {
  const history = signal(NO_HISTORY);
  const edits = signal(0);
  const move = (step: typeof undo) => () => {
    const moved = step(history.value, chain.scene.value);
    if (!moved) return;
    history.value = moved.history;
    chain.scene.value = moved.state;
    edits.value++;
  };
  return {
    chain,
    scene: chain.scene,
    edit(subject, change) {
      const before = chain.scene.value;
      const after = change(before);
      if (after === before) return;
      if (!PASSING.includes(subject)) {
        history.value = remember(history.value, before, subject);
        edits.value++;
      }
      chain.scene.value = after;
    },
    settle() {
      history.value = settle(history.value);
    },
    show(state) {
      history.value = NO_HISTORY;
      chain.scene.value = state;
    },
    undo: move(undo),
    redo: move(redo),
    canUndo: computed(() => history.value.past.length > 0),
    canRedo: computed(() => history.value.future.length > 0),
    edits,
  };
}
