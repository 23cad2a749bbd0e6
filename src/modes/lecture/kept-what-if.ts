/** The speaker's what-if of this window: kept for a reload of it, and in step with what the stage shows. */
import { effect, type ReadonlySignal } from "@preact/signals";
import { readAddress, writeAddress } from "../../state/address.ts";
import type { Session } from "../shared/session.ts";
import type { ScriptRun } from "./script-run.ts";
import type { WhatIf } from "./what-if.ts";

const KEPT = "lungward.speaker.whatIf";

export interface KeptWhatIf {
  /** To be called when it goes on stage. */
  sent(state: string): void;
  release(): void;
}

/**
 * `key` names the talk, `at` the stop, `aside` what the stage shows instead of the script's scene.
 * A what-if from the stage is taken over; taken back there, it goes here too.
 */
export function keepWhatIf(
  session: Session,
  script: ScriptRun,
  whatIf: ReadonlySignal<WhatIf | null>,
  {
    key,
    at,
    aside,
  }: {
    readonly key: string;
    readonly at: ReadonlySignal<number>;
    readonly aside: ReadonlySignal<string | null>;
  },
): KeptWhatIf {
  const nameOf = (index: number) => `${key} ${index}`;
  const show = (state: string) => {
    if (state !== writeAddress(session.scene.peek())) session.show(readAddress(state).state);
  };
  const kept = read(nameOf(at.peek()));
  if (kept !== null) show(kept);
  let known = kept !== null ? aside.peek() : null;
  const following = [
    effect(() => {
      const wanted = aside.value;
      if (wanted === known) return;
      known = wanted;
      if (wanted === null) script.restoreScene();
      else show(wanted);
    }),
    effect(() => {
      const name = nameOf(at.value);
      write(whatIf.value ? { name, state: writeAddress(session.scene.value) } : null);
    }),
  ];
  return {
    sent(state) {
      known = state;
    },
    release() {
      for (const stop of following) stop();
    },
  };
}

function read(name: string): string | null {
  try {
    const found = JSON.parse(sessionStorage.getItem(KEPT) ?? "null") as Record<string, unknown> | null;
    return found?.name === name && typeof found.state === "string" ? found.state : null;
  } catch {
    return null;
  }
}

function write(kept: { readonly name: string; readonly state: string } | null): void {
  try {
    if (kept) sessionStorage.setItem(KEPT, JSON.stringify(kept));
    else sessionStorage.removeItem(KEPT);
  } catch {
    // Without storage a reload begins with the script's own scene.
  }
}
