/** When a talk began: a reload of its window goes on with its clock, another talk has one of its own. */
import { type ReadonlySignal, signal } from "@preact/signals";
import * as v from "valibot";
import { forgetHands } from "../hall/kept-hands.ts";
import { windowKept } from "../windows/window-kept.ts";

const BEGAN = windowKept(
  "lungward.lecture.began",
  v.object({ list: v.string(), at: v.pipe(v.number(), v.minValue(1)) }),
);

export interface TalkClock {
  /** ms since 1970; null = the talk has not begun */
  readonly began: ReadonlySignal<number | null>;
  /** The clock begins with the first call. */
  begin(): void;
}

/** @param list names the talk */
export function talkClock(list: string): TalkClock {
  const kept = BEGAN.read();
  const began = signal(kept?.list === list ? kept.at : null);
  return {
    began,
    begin() {
      if (began.peek() !== null) return;
      const at = Date.now();
      began.value = at;
      BEGAN.write({ list, at });
    },
  };
}

/** A talk that is begun from its list anew, as after a rehearsal, has all its time, and no hand is raised in it yet. */
export function beginAnew(): void {
  BEGAN.write(null);
  forgetHands();
}
