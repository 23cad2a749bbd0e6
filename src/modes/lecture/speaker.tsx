/** The speaker's window: notes, what comes next, clock and time left, and what-ifs answered before the room sees them. */
import { computed, signal, useComputed, useSignal } from "@preact/signals";
import { useEffect, useMemo } from "preact/hooks";
import { t } from "../../i18n/index.ts";
import type { Question } from "../../lesson/lesson.ts";
import type { Library } from "../../lesson/library.ts";
import { writeAddress } from "../../state/address.ts";
import { figuresOf } from "../../ui/figures.ts";
import type { Key } from "../../ui/keys.ts";
import { InlineView } from "../../ui/lesson/prose.tsx";
import { ParameterForm } from "../../ui/parameter-form.tsx";
import { Readouts } from "../../ui/readout.tsx";
import { Toolbar } from "../../ui/toolbar.tsx";
import { earlierFigures, earlierLarge } from "../shared/earlier-figures.ts";
import { heldSentence } from "../shared/held.ts";
import { figuresThatMatter } from "../shared/lesson/figures-that-matter.ts";
import type { Context } from "../shared/mode.ts";
import { useKeys } from "../shared/use-keys.ts";
import { Clock, minutesAndSeconds } from "./clock.tsx";
import { HallDesk, type HallDeskProps, hallKeys } from "./hall-desk.tsx";
import { choicesOf, hallQuestion } from "./hall-question.ts";
import { lectureKeys } from "./lecture-keys.ts";
import { type Pictures, pictureOf } from "./own-stops.ts";
import { RoomFigures } from "./room-figures.tsx";
import { runScript } from "./script-run.ts";
import { SpeakerNotes } from "./speaker-notes.tsx";
import { StopThumb } from "./stop-thumb.tsx";
import { type FoundStop, findStops, nameOfStop, secondsFor, stepShown, stopsOfList } from "./stops.ts";
import type { Talk, TalkEvent } from "./talk.ts";
import type { KeptTalk } from "./talk-store.ts";
import { openWindowChannel } from "./window-channel.ts";
import { readToSpeaker, type ToRoom, type ToSpeaker } from "./window-messages.ts";

/** ms between calls for the stage: one that was reloaded learns so of this window */
const CALL = 1000;

export interface SpeakerProps {
  readonly context: Context;
  readonly library: Library;
  /** The talk that a link cannot hold; null where the stage names the steps. */
  readonly kept: KeptTalk | null;
}

export function Speaker({ context, library, kept }: SpeakerProps) {
  const latest = useSignal<ToSpeaker | null>(null);
  // Without a room in its address it listens to none.
  const room = context.place.value.more.room ?? "";
  const channel = useMemo(
    () =>
      openWindowChannel<ToRoom, ToSpeaker>(room, readToSpeaker, (message) => {
        if (JSON.stringify(message) !== JSON.stringify(latest.peek())) latest.value = message;
      }),
    [latest, room],
  );
  useEffect(() => {
    channel.post({ kind: "hello" });
    const call = setInterval(() => channel.post({ kind: "hello" }), CALL);
    return () => {
      clearInterval(call);
      channel.close();
    };
  }, [channel, latest]);
  const list = useComputed(() => latest.value?.list ?? "");
  const stops = useComputed(
    () => findStops(kept?.plan.stops ?? stopsOfList(list.value), library.lessons).found,
  );
  if (!latest.value || stops.value.length === 0)
    return (
      <main class="speaker waiting">
        <h1>{t("lecture.window")}</h1>
        <p role="status">{t("lecture.waiting")}</p>
      </main>
    );
  return (
    <Desk
      key={`${list.value} ${latest.value.reader}`}
      context={context}
      library={library}
      stops={stops.value}
      pictures={kept?.pictures ?? NO_PICTURES}
      latest={latest.value}
      post={(message) => channel.post(message)}
    />
  );
}

const NO_PICTURES: Pictures = new Map();

interface DeskProps {
  readonly context: Context;
  readonly library: Library;
  readonly stops: readonly FoundStop[];
  readonly pictures: Pictures;
  readonly latest: ToSpeaker;
  readonly post: (message: ToRoom) => void;
}

function Desk({ context, library, stops, pictures, latest, post }: DeskProps) {
  const { session } = context;
  const at = useMemo(() => signal(latest.talk.at), []);
  at.value = latest.talk.at;
  const script = useMemo(
    () =>
      runScript(
        session,
        library,
        stops,
        computed(() => at.value),
        latest.reader,
      ),
    [],
  );
  useEffect(() => script.release, [script]);
  const say = (event: TalkEvent) => post({ kind: "event", event });
  const large = useComputed(() =>
    figuresThatMatter(stepShown(script.stop.value), session.scene.value, session.chain.circulations.value),
  );
  const further = useComputed(() =>
    figuresOf(session.chain.circulations.value[0] ?? null).filter(({ name }) =>
      large.value.every((each) => each.name !== name),
    ),
  );
  const earlier = useComputed(() => earlierLarge(session, stepShown(script.stop.value)));
  const stop = script.stop.value;
  const asked = useMemo(() => hallQuestion(script), [script]).value;
  const voice = script.voice.value;
  const hall: HallDeskProps | null =
    voice && asked?.question.room && latest.hall?.question === asked.key
      ? {
          count: latest.hall,
          choices: choicesOf(asked.question, voice),
          voice,
          say: (event) => post({ kind: "hall", event }),
        }
      : null;
  useSpeakerKeys(say, () => post({ kind: "pause" }), hall ? hallKeys(hall) : []);
  const then = stops[latest.talk.at + 1];
  const item = (name: string, label: string, onPress: () => void) => ({ name, label: t(label), onPress });
  return (
    <div class="speaker">
      <header class="speaker-head">
        <h1 class="unseen">{t("lecture.window")}</h1>
        <p>{t("lecture.position", { step: latest.talk.at + 1, count: latest.talk.count })}</p>
        <p>{t("lecture.stopTime", { time: minutesAndSeconds(secondsFor(stop)) })}</p>
        <Clock began={latest.began} minutes={latest.minutes} />
      </header>
      <main class="speaker-script">
        <p class="speaker-label">{t("lecture.now")}</p>
        <h2>{nameOfStop(stop)}</h2>
        <p class="speaker-room" role="status">
          {roomSees(latest.talk)}
        </p>
        <SpeakerNotes stop={stop} voice={voice} />
        {pictureOf(stop) && <StopThumb stop={stop} pictures={pictures} />}
        {hall && asked && <AskedOfRoom question={asked.question} hall={hall} />}
        <p class="speaker-label">{t("lecture.then")}</p>
        <p class="speaker-then">{then ? nameOfStop(then) : t("lecture.ended")}</p>
        {then && then.kind !== "step" && <StopThumb stop={then} pictures={pictures} />}
      </main>
      <section class="speaker-what-if" aria-label={t("lecture.whatIf")}>
        <h2>{t("lecture.answer")}</h2>
        <RoomFigures figures={large.value} earlier={earlier.value} />
        <Readouts figures={further.value} earlier={earlierFigures(session)} />
        <p class="quiet-text">{heldSentence(session.scene.value.request)}</p>
        <div class="actions">
          <button
            type="button"
            class="main"
            onClick={() => say({ kind: "aside", state: writeAddress(session.scene.value) })}
          >
            {t("lecture.send")}
          </button>
          <button
            type="button"
            onClick={() => {
              say({ kind: "script" });
              script.restoreScene();
            }}
          >
            {t("lecture.script")}
          </button>
        </div>
        <ParameterForm editing={session} />
      </section>
      <footer class="speaker-foot">
        <Toolbar
          label={t("lecture.bar")}
          items={[
            item("back", "lecture.back", () => say({ kind: "back" })),
            item("next", "lecture.next", () => say({ kind: "next" })),
            item("pause", latest.paused ? "transport.play" : "transport.pause", () =>
              post({ kind: "pause" }),
            ),
            item("black", "lecture.black", () => say({ kind: "blank", to: "black" })),
            item("white", "lecture.white", () => say({ kind: "blank", to: "white" })),
            item("hold", latest.talk.heldAt === null ? "lecture.hold" : "lecture.holding", () =>
              say({ kind: "hold" }),
            ),
          ]}
        />
      </footer>
    </div>
  );
}

/** The question put to the room, and its answers counted. */
function AskedOfRoom({ question, hall }: { readonly question: Question; readonly hall: HallDeskProps }) {
  return (
    <section aria-label={t(`lesson.kind.${question.kind}`)} class="speaker-asked">
      <p>
        <InlineView words={question.ask} voice={hall.voice} />
      </p>
      <HallDesk {...hall} />
    </section>
  );
}

function roomSees(talk: Talk): string {
  if (talk.blank !== "none") return t(`lecture.room.${talk.blank}`);
  if (talk.aside !== null) return t("lecture.room.aside");
  if (talk.heldAt !== null) return t("lecture.room.held", { step: talk.heldAt + 1 });
  return t("lecture.room.follows");
}

/** The clicker works whichever window has the focus. @param first keys that come before a lecture's own */
function useSpeakerKeys(say: (event: TalkEvent) => void, pause: () => void, first: readonly Key[]): void {
  const nothing = () => {};
  const keys = lectureKeys({
    say,
    pause,
    start: nothing,
    fullScreen: nothing,
    point: nothing,
    whatIf: nothing,
    speaker: nothing,
    theme: nothing,
    digit: nothing,
    enter: () => false,
    escape: nothing,
    keyList: nothing,
  });
  useKeys([...first, ...keys], () => false);
}
