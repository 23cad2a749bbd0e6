/** Earlier states, for undo and redo. A drag or a held key makes one entry, not hundreds. */
import type { SceneState } from "./scene-state.ts";

export interface History {
  readonly past: readonly SceneState[];
  readonly future: readonly SceneState[];
  /** What the newest entry changed, while further changes of the same are added to it; null once it is closed. */
  readonly open: string | null;
}

export const NO_HISTORY: History = { past: [], future: [], open: null };

const LONGEST = 200;

/**
 * Records the state that an edit is about to replace. Edits with the same `subject` (a parameter's name, say) that
 * follow each other without `settle` between are one entry.
 */
export function remember(history: History, before: SceneState, subject: string): History {
  if (history.open === subject) return { ...history, future: [] };
  return { past: [...history.past, before].slice(-LONGEST), future: [], open: subject };
}

/** Closes the entry: the slider has been released. */
export const settle = (history: History): History => ({ ...history, open: null });

export interface Moved {
  readonly history: History;
  readonly state: SceneState;
}

/** The previous state, undefined when there is no earlier one. Pause and dye are momentary and keep their present value. */
export function undo(history: History, present: SceneState): Moved | undefined {
  const state = history.past.at(-1);
  if (!state) return undefined;
  return {
    history: { past: history.past.slice(0, -1), future: [present, ...history.future], open: null },
    state: keepMoment(state, present),
  };
}

export function redo(history: History, present: SceneState): Moved | undefined {
  const state = history.future[0];
  if (!state) return undefined;
  return {
    history: { past: [...history.past, present], future: history.future.slice(1), open: null },
    state: keepMoment(state, present),
  };
}

const keepMoment = (state: SceneState, present: SceneState): SceneState => ({
  ...state,
  view: { ...state.view, paused: present.view.paused, moment: present.view.moment, dye: present.view.dye },
});
