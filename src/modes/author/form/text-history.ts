/** The texts before each of the form's edits: what was done can be undone, and that in turn. */
import { type ReadonlySignal, signal } from "@preact/signals";

export interface TextHistory {
  /** `what` names the edit; the same one again, right behind, is one step. "" is never the same. */
  remember(before: string, what: string): void;
  /** @returns the text to go to; null where there is none */
  undo(now: string): string | null;
  redo(now: string): string | null;
  /** The form is left with this text: it may be changed elsewhere. */
  leave(text: string): void;
  /** The form is back; what was changed meanwhile is one edit. */
  meet(text: string): void;
  readonly canUndo: ReadonlySignal<boolean>;
  readonly canRedo: ReadonlySignal<boolean>;
}

const MAX_STEPS = 200;

export function textHistory(): TextHistory {
  let past: readonly string[] = [];
  let future: readonly string[] = [];
  let last = "";
  let left: string | null = null;
  const canUndo = signal(false);
  const canRedo = signal(false);
  const tell = () => {
    canUndo.value = past.length > 0;
    canRedo.value = future.length > 0;
  };
  return {
    canUndo,
    canRedo,
    remember(before, what) {
      if (what === "" || what !== last) past = [...past, before].slice(-MAX_STEPS);
      last = what;
      future = [];
      tell();
    },
    leave(text) {
      left = text;
    },
    meet(text) {
      if (left !== null && left !== text) {
        [past, future] = [[...past, left].slice(-MAX_STEPS), []];
        tell();
      }
      [left, last] = [null, ""];
    },
    undo(now) {
      const to = past.at(-1);
      if (to === undefined) return null;
      [past, future, last] = [past.slice(0, -1), [now, ...future], ""];
      tell();
      return to;
    },
    redo(now) {
      const to = future[0];
      if (to === undefined) return null;
      [past, future, last] = [[...past, now], future.slice(1), ""];
      tell();
      return to;
    },
  };
}
