/** The speaker's what-if of this window: kept for a reload of it, and in step with what the stage shows. */
import { effect, type ReadonlySignal } from "@preact/signals";
import * as v from "valibot";
import { LONGEST_READ, writeAddress } from "../../../state/address.ts";
import type { Session } from "../../shared/session.ts";
import { followAside, showState } from "../talk/aside.ts";
import type { ScriptRun } from "../talk/script-run.ts";
import type { WhatIf } from "../talk/what-if.ts";
import { windowKept } from "../windows/window-kept.ts";

const KEPT = windowKept(
  "lungward.speaker.whatIf",
  v.object({ name: v.string(), state: v.pipe(v.string(), v.maxLength(LONGEST_READ)) }),
);

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
  const kept = KEPT.read();
  const own = kept?.name === nameOf(at.peek()) ? kept.state : null;
  if (own !== null) showState(session, own);
  const following = followAside(session, aside, script, own === null ? null : aside.peek());
  const stop = effect(() => {
    const name = nameOf(at.value);
    KEPT.write(whatIf.value ? { name, state: writeAddress(session.scene.value) } : null);
  });
  return {
    sent: following.known,
    release() {
      stop();
      following.release();
    },
  };
}
