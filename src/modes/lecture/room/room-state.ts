/** The stage's side of a lecture: the talk, the line to the speaker's window, and what survives a reload. */
import { computed, effect, type ReadonlySignal, signal } from "@preact/signals";
import * as v from "valibot";
import type { Library } from "../../../lesson/library/library.ts";
import type { Kept } from "../../../ui/kept-in.ts";
import { drawReader } from "../../reader.ts";
import { isMoving, togglePlay } from "../../shared/handles/play.ts";
import type { Context } from "../../shared/mode.ts";
import { type StageAudience, stageAudience } from "../audience/stage-audience.ts";
import { openStageHall } from "../audience/stage-hall.ts";
import { type HallRun, runHall } from "../hall/hall-run.ts";
import { type MarkEvent, type Marks, mark, NO_MARKS } from "../pen/pen.ts";
import { pictureSender } from "../picture/send-picture.ts";
import { followAside } from "../talk/aside.ts";
import type { Pictures } from "../talk/own-stops.ts";
import { runScript, type ScriptRun } from "../talk/script-run.ts";
import { coversStage, type FoundStop, KEPT_TALK, stopAsked } from "../talk/stops.ts";
import { shownAt, speak, startTalk, type Talk, type TalkEvent } from "../talk/talk.ts";
import { talkClock } from "../talk/talk-clock.ts";
import { followWhatIf, type WhatIf } from "../talk/what-if.ts";
import { newRoom, openWindowChannel, roomId } from "../windows/window-channel.ts";
import { windowKept } from "../windows/window-kept.ts";
import { readToRoom, type TalkReport, type ToRoom, type ToSpeaker } from "../windows/window-messages.ts";
import { asBeforeReload, keepForReload } from "./kept-room.ts";

export interface RoomState {
  readonly talk: ReadonlySignal<Talk>;
  readonly script: ScriptRun;
  readonly hall: HallRun;
  readonly marks: ReadonlySignal<Marks>;
  /** What the scene shows instead of the script's; null while it shows the script's. */
  readonly whatIf: ReadonlySignal<WhatIf | null>;
  /** null where only hands are raised */
  readonly audience: StageAudience | null;
  say(event: TalkEvent): void;
  mark(event: MarkEvent): void;
  /** Opens the speaker's window, or brings it forward. */
  openSpeaker(): void;
  hasBegun(): boolean;
  /** The clock begins with the first call. */
  begin(): void;
  release(): void;
}

export interface RoomOptions {
  readonly context: Context;
  readonly library: Library;
  readonly stops: readonly FoundStop[];
  /** The steps as in a link; "" where the talk holds more than a link can. */
  readonly list: string;
  readonly pictures: Pictures;
  readonly minutes: number;
  /** The talk as it was when its language was changed; written when this room is left. */
  readonly left: { current: LeftTalk | null };
}

export interface LeftTalk {
  readonly language: string;
  readonly stops: string;
  readonly talk: Talk;
}

/** Without it answers change places after a reload. */
const READER = windowKept("lungward.lecture.reader", v.pipe(v.number(), v.gtValue(0)));
/** The speaker's window knows this one by it. */
const ROOM = windowKept("lungward.lecture.room", roomId);

export function roomState({ context, library, stops, list, minutes, left }: RoomOptions): RoomState {
  const { session, address, place, stage } = context;
  const now = { language: library.language, stops: JSON.stringify([list, stops.length]) };
  const named = list || KEPT_TALK;
  const start = startTalk(stops.length, stopAsked(stops, place.peek().step));
  const talk = signal(talkGoingOn(left.current, now) ?? asBeforeReload(named, start));
  const clock = talkClock(named);
  const at = computed(() => shownAt(talk.value));
  const marks = signal(NO_MARKS);
  const putMark = (event: MarkEvent) => {
    marks.value = mark(marks.peek(), event);
  };
  const reader = keptOr(READER, drawReader);
  const script = runScript(session, library, stops, at, reader);
  const audience = stageAudience();
  const hall = runHall(session, script, audience, named);
  const whatIf = followWhatIf(session, script.stop);

  const say = (event: TalkEvent) => {
    talk.value = speak(talk.peek(), event);
  };
  const toSpeaker = (): TalkReport => ({
    kind: "talk",
    talk: talk.value,
    list,
    minutes,
    began: clock.began.value,
    paused: !isMoving(context),
    reader,
    hall: hall.count.value,
  });
  const id = keptOr(ROOM, newRoom);
  const channel = openWindowChannel<ToSpeaker, ToRoom>(id, readToRoom, (message) => {
    if (message.kind === "event") {
      clock.begin();
      say(message.event);
    } else if (message.kind === "hall") hall.hear(message.event);
    else if (message.kind === "mark") putMark(message.event);
    else if (message.kind === "pause") togglePlay(context);
    else if (message.kind === "hello") channel.post(toSpeaker());
    else if (message.kind === "look") pictures.look();
  });
  const pictures = pictureSender(stage, (picture) => channel.post(picture));
  const following = [
    effect(() => channel.post(toSpeaker())),
    // The address follows the talk, so that a reload opens the same step.
    effect(() => address.go({ step: String(talk.value.at + 1) })),
    effect(() => keepForReload(named, talk.value)),
    // Lines belong to the picture that they were drawn on.
    effect(() => {
      if (at.value >= 0) putMark({ kind: "clear" });
    }),
    effect(() => stage.hold(talk.value.blank !== "none" || coversStage(script.stop.value))),
    followAside(
      session,
      computed(() => talk.value.aside),
      script,
    ).release,
    whatIf.release,
    openStageHall({ room: id, hall, script, library, audience }),
  ];
  return {
    talk,
    script,
    hall,
    marks,
    whatIf: whatIf.now,
    audience,
    say,
    mark: putMark,
    openSpeaker() {
      const other = window.open(
        `?mode=lecture&window=speaker&room=${id}${list ? "" : `&talk=${KEPT_TALK}`}${place.peek().language ? `&language=${place.peek().language}` : ""}`,
        `lungward-speaker-${id}`,
        "popup,width=1100,height=760",
      );
      if (other) channel.join(other);
    },
    hasBegun: () => clock.began.peek() !== null,
    begin: clock.begin,
    release() {
      left.current = { ...now, talk: talk.peek() };
      for (const stop of following) stop();
      stage.hold(false);
      pictures.release();
      hall.release();
      script.release();
      channel.close();
    },
  };
}

/** The same stops in another language go on where they were: held, blank and all. */
const talkGoingOn = (left: LeftTalk | null, now: Omit<LeftTalk, "talk">): Talk | null =>
  left && left.stops === now.stops && left.language !== now.language ? left.talk : null;

/** What this window kept; else it is made, and kept from now on. */
function keptOr<T>(kept: Kept<T>, make: () => T): T {
  const value = kept.read() ?? make();
  kept.write(value);
  return value;
}
