/** The stage's line to the audience's server: what is told to the phones, and what comes back from them. */
import { type ReadonlySignal, signal } from "@preact/signals";
import { drawChance, openLine } from "../../../audience/line.ts";
import {
  type Counts,
  type FromStage,
  type Hall,
  LONGEST,
  readMessage,
  type ToStage,
  toStage,
} from "../../../audience/line-messages.ts";
import { forgetStageKey, keptStageKey } from "./stage-key.ts";

export interface StageAudience {
  readonly code: string;
  /** Where phones find their page; "" until the server has said so. */
  readonly address: ReadonlySignal<string>;
  readonly open: ReadonlySignal<boolean>;
  /** The talk was ended: nothing is there any more. */
  readonly over: ReadonlySignal<boolean>;
  readonly hall: ReadonlySignal<Omit<Hall, "kind">>;
  /** By question. */
  readonly counts: ReadonlySignal<ReadonlyMap<string, Counts>>;
  /** Whether the stage shows how to join, question or not. */
  readonly inviting: ReadonlySignal<boolean>;
  invite(on: boolean): void;
  /** Nothing is said twice, and nothing while there is no line. */
  say(message: FromStage): void;
  release(): void;
}

/** null without such a server: then hands are raised. */
export function stageAudience(): StageAudience | null {
  const held = keptStageKey();
  if (!held) return null;
  const address = signal("");
  const open = signal(false);
  const over = signal(false);
  const hall = signal({ phones: 0, lost: 0 });
  const counts = signal<ReadonlyMap<string, Counts>>(new Map());
  const inviting = signal(false);
  let said = "";
  const line = openLine<FromStage, ToStage>({
    side: "stage",
    chance: drawChance,
    greeting: () => ({ kind: "hold", ...held }),
    read: (data) => readMessage(toStage, data, LONGEST.toStage),
    hear(message) {
      if (message.kind === "held") {
        said = "";
        address.value = message.address;
        open.value = true;
      } else if (message.kind === "hall") hall.value = { phones: message.phones, lost: message.lost };
      else if (message.kind === "counts")
        counts.value = new Map(counts.peek()).set(message.question, message);
    },
    onLine(now) {
      if (!now) open.value = false;
    },
    onRefused() {
      forgetStageKey();
      over.value = true;
    },
  });
  return {
    code: held.code,
    ...{ address, open, over, hall, counts, inviting },
    invite(on) {
      inviting.value = on;
    },
    say(message) {
      const text = JSON.stringify(message);
      if (text !== said && line.say(message)) said = text;
    },
    release: line.close,
  };
}
