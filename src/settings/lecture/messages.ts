/** What passes between the stage's window and the speaker's. */
import type { Talk, TalkEvent } from "./talk.ts";

export const LINE = "lungward.lecture";

export type ToSpeaker = {
  readonly kind: "talk";
  readonly talk: Talk;
  /** The playlist as in a link, and its time. */
  readonly list: string;
  readonly minutes: number;
  /** ms since 1970 at which the talk began; null = not yet */
  readonly began: number | null;
  readonly paused: boolean;
  /** The room as a reader: answers stand at the same places in both windows. */
  readonly reader: number;
};

export type ToRoom =
  | { readonly kind: "hello" }
  | { readonly kind: "event"; readonly event: TalkEvent }
  | { readonly kind: "pause" };
