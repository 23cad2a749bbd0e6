/** The speaker's window: notes, what comes next, clock and time left, and what-ifs answered before the room sees them. */
import { computed, signal, useComputed, useSignal } from "@preact/signals";
import { useEffect, useMemo } from "preact/hooks";
import { t } from "../../i18n/index.ts";
import type { Library } from "../../lesson/library.ts";
import { writeAddress } from "../../state/address.ts";
import { figuresOf } from "../../ui/figures.ts";
import { InlineView, ProseView } from "../../ui/lesson/prose.tsx";
import type { Voice } from "../../ui/lesson/voice.ts";
import { ParameterForm } from "../../ui/parameter-form.tsx";
import { Readouts } from "../../ui/readout.tsx";
import { Toolbar } from "../../ui/toolbar.tsx";
import { earlierFigures, earlierLarge } from "../shared/earlier-figures.ts";
import { heldSentence } from "../shared/held.ts";
import { figuresThatMatter } from "../shared/lesson/figures-that-matter.ts";
import type { Context } from "../shared/mode.ts";
import { useKeys } from "../shared/use-keys.ts";
import { Clock } from "./clock.tsx";
import type { HallCount, HallEvent } from "./hall.ts";
import { HallDesk } from "./hall-desk.tsx";
import { choicesOf, type HallQuestion, hallQuestion } from "./hall-question.ts";
import { lectureKeys } from "./lecture-keys.ts";
import { readStops } from "./playlist.ts";
import { RoomFigures } from "./room-figures.tsx";
import { runScript } from "./script-run.ts";
import { type FoundStop, findStops } from "./stops.ts";
import type { Talk, TalkEvent } from "./talk.ts";
import { openWindowChannel } from "./window-channel.ts";
import { readToSpeaker, type ToRoom, type ToSpeaker } from "./window-messages.ts";

/** ms between calls for the stage: one that was reloaded learns so of this window */
const CALL = 1000;

export function Speaker({ context, library }: { readonly context: Context; readonly library: Library }) {
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
  const stops = useComputed(() => findStops(readStops(list.value), library.lessons).found);
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
      latest={latest.value}
      post={(message) => channel.post(message)}
    />
  );
}

interface DeskProps {
  readonly context: Context;
  readonly library: Library;
  readonly stops: readonly FoundStop[];
  readonly latest: ToSpeaker;
  readonly post: (message: ToRoom) => void;
}

function Desk({ context, library, stops, latest, post }: DeskProps) {
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
  useSpeakerKeys(say, () => post({ kind: "pause" }));
  const large = useComputed(() =>
    figuresThatMatter(script.stop.value.step, session.scene.value, session.chain.circulations.value),
  );
  const further = useComputed(() =>
    figuresOf(session.chain.circulations.value[0] ?? null).filter(({ name }) =>
      large.value.every((each) => each.name !== name),
    ),
  );
  const earlier = useComputed(() => earlierLarge(session, script.stop.value.step));
  const { step } = script.stop.value;
  const asked = useComputed(() => hallQuestion(script).value).value;
  const voice = script.voice.value;
  const then = stops[latest.talk.at + 1]?.step;
  const item = (name: string, label: string, onPress: () => void) => ({ name, label: t(label), onPress });
  return (
    <div class="speaker">
      <header class="speaker-head">
        <h1 class="unseen">{t("lecture.window")}</h1>
        <p>{t("lecture.position", { step: latest.talk.at + 1, count: latest.talk.count })}</p>
        <Clock began={latest.began} minutes={latest.minutes} />
      </header>
      <main class="speaker-script">
        <p class="speaker-label">{t("lecture.now")}</p>
        <h2>{step.title}</h2>
        <p class="speaker-room" role="status">
          {roomSees(latest.talk)}
        </p>
        <section aria-label={t("lecture.notes")} class="speaker-notes" lang={step.notes?.language}>
          {step.notes ? <ProseView prose={step.notes.prose} voice={voice} /> : <p>{t("lecture.noNotes")}</p>}
        </section>
        {asked?.question.room && latest.hall?.question === asked.key && (
          <AskedOfRoom
            asked={asked}
            count={latest.hall}
            voice={voice}
            say={(event) => post({ kind: "hall", event })}
          />
        )}
        <p class="speaker-label">{t("lecture.then")}</p>
        <p class="speaker-then">{then ? then.title : t("lecture.ended")}</p>
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
              script.run.peek().restoreScene();
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
const AskedOfRoom = ({ asked, count, voice, say }: AskedProps) => (
  <section aria-label={t(`lesson.kind.${asked.question.kind}`)} class="speaker-asked">
    <p>
      <InlineView words={asked.question.ask} voice={voice} />
    </p>
    <HallDesk count={count} choices={choicesOf(asked.question, voice)} voice={voice} say={say} />
  </section>
);

interface AskedProps {
  readonly asked: HallQuestion;
  readonly count: HallCount;
  readonly voice: Voice;
  readonly say: (event: HallEvent) => void;
}

function roomSees(talk: Talk): string {
  if (talk.blank !== "none") return t(`lecture.room.${talk.blank}`);
  if (talk.aside !== null) return t("lecture.room.aside");
  if (talk.heldAt !== null) return t("lecture.room.held", { step: talk.heldAt + 1 });
  return t("lecture.room.follows");
}

/** The clicker works whichever window has the focus. */
function useSpeakerKeys(say: (event: TalkEvent) => void, pause: () => void): void {
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
  useKeys(keys, () => false);
}
