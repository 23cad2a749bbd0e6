/** Follows what a talk shows instead of the script's scene. */
import { effect, type ReadonlySignal } from "@preact/signals";
import { readAddress, writeAddress } from "../../../state/address.ts";
import type { Session } from "../../shared/session.ts";
import type { ScriptRun } from "./script-run.ts";

export const showState = (session: Session, state: string): void => {
  if (state !== writeAddress(session.scene.peek())) session.show(readAddress(state).state);
};

export interface Aside {
  /** The scene shows this already. */
  known(state: string): void;
  release(): void;
}

/** Shows a what-if that goes on stage, and the script's own scene again when it is taken back; `shown` is what the scene shows at first. */
export function followAside(
  session: Session,
  aside: ReadonlySignal<string | null>,
  script: ScriptRun,
  shown: string | null = null,
): Aside {
  let last = shown;
  const release = effect(() => {
    const wanted = aside.value;
    if (wanted === last) return;
    last = wanted;
    if (wanted === null) script.restoreScene();
    else showState(session, wanted);
  });
  return {
    known(state) {
      last = state;
    },
    release,
  };
}
