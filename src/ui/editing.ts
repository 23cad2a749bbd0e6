/** What a control needs to change the scene. */
import type { ReadonlySignal } from "@preact/signals";
import type { Edit } from "../state/edit.ts";
import type { SceneState } from "../state/scene-state.ts";

export interface Editing {
  readonly scene: ReadonlySignal<SceneState>;
  /** `subject` names what is changed; the same subject again, before `settle`, is one step of undo. */
  edit(subject: string, change: Edit): void;
  /** The finger has left the control. */
  settle(): void;
}
