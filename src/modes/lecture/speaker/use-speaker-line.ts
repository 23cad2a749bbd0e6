/** The speaker's window on its line to the stage: what was heard last, and the calls that keep the two together. */
import { type ReadonlySignal, useSignal } from "@preact/signals";
import { useEffect, useMemo } from "preact/hooks";
import { openWindowChannel } from "../windows/window-channel.ts";
import {
  readToSpeaker,
  type StagePictureMessage,
  type TalkReport,
  type ToRoom,
  type ToSpeaker,
} from "../windows/window-messages.ts";

/** ms between calls for the stage: one that was reloaded learns so of this window */
const CALL = 1000;

export interface SpeakerLine {
  readonly report: ReadonlySignal<TalkReport | null>;
  readonly picture: ReadonlySignal<StagePictureMessage | null>;
  post(message: ToRoom): void;
}

export function useSpeakerLine(room: string): SpeakerLine {
  const report = useSignal<TalkReport | null>(null);
  const picture = useSignal<StagePictureMessage | null>(null);
  const channel = useMemo(
    () =>
      openWindowChannel<ToRoom, ToSpeaker>(room, readToSpeaker, (message) => {
        if (message.kind === "picture") picture.value = message;
        else if (JSON.stringify(message) !== JSON.stringify(report.peek())) report.value = message;
      }),
    [report, picture, room],
  );
  useEffect(() => {
    const call = () => {
      channel.post({ kind: "hello" });
      if (!document.hidden) channel.post({ kind: "look" });
    };
    call();
    const calls = setInterval(call, CALL);
    return () => {
      clearInterval(calls);
      channel.close();
    };
  }, [channel]);
  return { report, picture, post: (message) => channel.post(message) };
}
