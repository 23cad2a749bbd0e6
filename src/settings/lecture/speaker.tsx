/** The speaker's window: notes, what comes next, clock and time left, and what-ifs answered before the room sees them. */
import { computed, signal, useComputed, useSignal } from "@preact/signals";
import { useEffect, useLayoutEffect, useMemo } from "preact/hooks";
import { figuresOf } from "../../interface/figures.ts";
import { listenForKeys } from "../../interface/keys.ts";
import { InlineView, ProseView } from "../../interface/lesson/prose.tsx";
import type { Voice } from "../../interface/lesson/voice.ts";
import { ParameterForm } from "../../interface/parameter-form.tsx";
import { Readouts } from "../../interface/readout.tsx";
import { Toolbar } from "../../interface/toolbar.tsx";
import type { ChoiceQuestion } from "../../lesson/lesson.ts";
import type { Shelf } from "../../lesson/shelf.ts";
import { writeAddress } from "../../state/address.ts";
import { t } from "../../words/index.ts";
import { figuresThatMatter } from "../lesson/figures-that-matter.ts";
import { lettersOn } from "../preferences.ts";
import type { Context } from "../setting.ts";
import { Clock } from "./clock.tsx";
import { lectureKeys } from "./lecture-keys.ts";
import { openLine } from "./line.ts";
import { readToSpeaker, type ToRoom, type ToSpeaker } from "./messages.ts";
import { readStops } from "./playlist.ts";
import { RoomFigures } from "./room-figures.tsx";
import { runScript } from "./script-run.ts";
import { type FoundStop, findStops } from "./stops.ts";
import type { Talk, TalkEvent } from "./talk.ts";

/** ms between calls for the stage: one that was loaded anew learns so of this window */
const CALL = 1000;

export function Speaker({ context, shelf }: { readonly context: Context; readonly shelf: Shelf }) {
  const told = useSignal<ToSpeaker | null>(null);
  // Without a room in its address it listens to none.
  const room = context.place.value.more.room ?? "";
  const line = useMemo(
    () =>
      openLine<ToRoom, ToSpeaker>(room, readToSpeaker, (message) => {
        if (JSON.stringify(message) !== JSON.stringify(told.peek())) told.value = message;
      }),
    [told, room],
  );
  useEffect(() => {
    line.post({ kind: "hello" });
    const call = setInterval(() => line.post({ kind: "hello" }), CALL);
    return () => {
      clearInterval(call);
      line.close();
    };
  }, [line, told]);
  const list = useComputed(() => told.value?.list ?? "");
  const stops = useComputed(() => findStops(readStops(list.value), shelf.lessons).found);
  if (!told.value || stops.value.length === 0)
    return (
      <main class="speaker waiting">
        <h1>{t("lecture.window")}</h1>
        <p role="status">{t("lecture.waiting")}</p>
      </main>
    );
  return (
    <Desk
      key={`${list.value} ${told.value.reader}`}
      context={context}
      shelf={shelf}
      stops={stops.value}
      told={told.value}
      post={(message) => line.post(message)}
    />
  );
}

interface DeskProps {
  readonly context: Context;
  readonly shelf: Shelf;
  readonly stops: readonly FoundStop[];
  readonly told: ToSpeaker;
  readonly post: (message: ToRoom) => void;
}

function Desk({ context, shelf, stops, told, post }: DeskProps) {
  const { session } = context;
  const at = useMemo(() => signal(told.talk.at), []);
  at.value = told.talk.at;
  const script = useMemo(
    () =>
      runScript(
        session,
        shelf,
        stops,
        computed(() => at.value),
        told.reader,
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
    figuresOf(session.chain.circulations.value[0] ?? null, null).filter(
      ({ name, source }) => source !== "field" && large.value.every((each) => each.name !== name),
    ),
  );
  const { step } = script.stop.value;
  const asked = script.run.value.question.value?.question;
  const voice = script.voice.value;
  const then = stops[told.talk.at + 1]?.step;
  const item = (name: string, label: string, onPress: () => void) => ({ name, label: t(label), onPress });
  return (
    <div class="speaker">
      <header class="speaker-head">
        <h1 class="unseen">{t("lecture.window")}</h1>
        <p>{t("lecture.position", { step: told.talk.at + 1, count: told.talk.count })}</p>
        <Clock began={told.began} minutes={told.minutes} />
      </header>
      <main class="speaker-script">
        <p class="speaker-label">{t("lecture.now")}</p>
        <h2>{step.title}</h2>
        <p class="speaker-room" role="status">
          {roomSees(told.talk)}
        </p>
        <section aria-label={t("lecture.notes")} class="speaker-notes" lang={step.notes?.language}>
          {step.notes ? <ProseView prose={step.notes.prose} voice={voice} /> : <p>{t("lecture.noNotes")}</p>}
        </section>
        {asked?.room && "answers" in asked && <AskedOfRoom question={asked} voice={voice} />}
        <p class="speaker-label">{t("lecture.then")}</p>
        <p class="speaker-then">{then ? then.title : t("lecture.ended")}</p>
      </main>
      <section class="speaker-what-if" aria-label={t("lecture.whatIf")}>
        <h2>{t("lecture.answer")}</h2>
        <RoomFigures figures={large.value} />
        <Readouts figures={further.value} />
        <p class="quiet-text">
          {t("bench.held", { rule: t(`volumeRule.${session.scene.value.request.volumeRule}`) })}
        </p>
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
            item("pause", told.paused ? "transport.play" : "transport.pause", () => post({ kind: "pause" })),
            item("black", "lecture.black", () => say({ kind: "blank", to: "black" })),
            item("white", "lecture.white", () => say({ kind: "blank", to: "white" })),
            item("hold", told.talk.heldAt === null ? "lecture.hold" : "lecture.holding", () =>
              say({ kind: "hold" }),
            ),
          ]}
        />
      </footer>
    </div>
  );
}

/** What the room chooses from, its first answer first. */
const AskedOfRoom = ({ question, voice }: { readonly question: ChoiceQuestion; readonly voice: Voice }) => (
  <section aria-label={t(`lesson.kind.${question.kind}`)} class="speaker-asked">
    <p>
      <InlineView words={question.ask} voice={voice} />
    </p>
    <ol>
      {question.answers.map(({ id, say }) => (
        <li key={id} data-answer={id}>
          <InlineView words={say} voice={voice} />
        </li>
      ))}
    </ol>
  </section>
);

function roomSees(talk: Talk): string {
  if (talk.blank !== "none") return t(`lecture.room.${talk.blank}`);
  if (talk.aside !== null) return t("lecture.room.aside");
  if (talk.heldAt !== null) return t("lecture.room.held", { step: talk.heldAt + 1 });
  return t("lecture.room.follows");
}

/** The clicker works whichever window has the focus. */
function useSpeakerKeys(say: (event: TalkEvent) => void, pause: () => void): void {
  const nothing = () => {};
  useLayoutEffect(
    () =>
      listenForKeys(
        () =>
          lectureKeys({
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
          }),
        () => lettersOn.value,
      ),
    [],
  );
}
