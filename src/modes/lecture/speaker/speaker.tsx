/** The speaker's window: the stage live, what comes next, notes, clock and time left, and what-ifs answered before the room sees them. */
import { computed, useComputed, useSignal } from "@preact/signals";
import { useEffect, useMemo } from "preact/hooks";
import { t } from "../../../i18n/index.ts";
import type { Question } from "../../../lesson/lesson.ts";
import type { Library } from "../../../lesson/library/library.ts";
import type { Key } from "../../../ui/keys.ts";
import { InlineView } from "../../../ui/lesson/prose.tsx";
import { Script } from "../../../ui/lesson/script.tsx";
import type { Voice } from "../../../ui/lesson/voice.ts";
import { Toolbar } from "../../../ui/toolbar.tsx";
import type { Context } from "../../shared/mode.ts";
import { useKeys } from "../../shared/use-keys.ts";
import { HallPhones } from "../audience/hall-phones.tsx";
import type { KeptTalk } from "../files/talk-store.ts";
import { HallDesk, type HallDeskProps, hallKeys } from "../hall/hall-desk.tsx";
import { choicesOf, hallQuestion } from "../hall/hall-question.ts";
import type { Tool } from "../pen/pen-surface.tsx";
import { NextPicture } from "../picture/next-picture.tsx";
import { PersonOf } from "../talk/own-person-words.tsx";
import type { Pictures } from "../talk/own-stops.ts";
import { runScript } from "../talk/script-run.ts";
import { type FoundStop, findStops, nameOfStop, secondsFor, stepShown, stopsOfList } from "../talk/stops.ts";
import { shownAt, type Talk, type TalkEvent } from "../talk/talk.ts";
import { followWhatIf } from "../talk/what-if.ts";
import { useFreeFocus } from "../windows/free-focus.ts";
import { type LectureActs, lectureKeys } from "../windows/lecture-keys.ts";
import { typedStop } from "../windows/typed-stop.ts";
import type { TalkReport } from "../windows/window-messages.ts";
import { Clock, minutesAndSeconds } from "./clock.tsx";
import { keepWhatIf } from "./kept-what-if.ts";
import { SpeakerNotes } from "./speaker-notes.tsx";
import { SpeakerStage } from "./speaker-stage.tsx";
import { SpeakerWhatIf } from "./speaker-what-if.tsx";
import { type SpeakerLine, useSpeakerLine } from "./use-speaker-line.ts";

export interface SpeakerProps {
  readonly context: Context;
  readonly library: Library;
  /** The talk that a link cannot hold; null where the stage names the steps. */
  readonly kept: KeptTalk | null;
}

export function Speaker({ context, library, kept }: SpeakerProps) {
  // Without a room in its address it listens to none.
  const room = context.place.value.more.room ?? "";
  const line = useSpeakerLine(room);
  const latest = line.report.value;
  const list = useComputed(() => line.report.value?.list ?? "");
  const stops = useComputed(
    () => findStops(kept?.plan.stops ?? stopsOfList(list.value), library.lessons).found,
  );
  if (!latest || stops.value.length === 0)
    return (
      <main class="speaker waiting">
        <h1>{t("lecture.window")}</h1>
        <p role="status">{t("lecture.waiting")}</p>
      </main>
    );
  return (
    <Desk
      key={`${list.value} ${latest.reader}`}
      context={context}
      library={library}
      stops={stops.value}
      pictures={kept?.pictures ?? NO_PICTURES}
      latest={latest}
      line={line}
    />
  );
}

const NO_PICTURES: Pictures = new Map();

interface DeskProps {
  readonly context: Context;
  readonly library: Library;
  readonly stops: readonly FoundStop[];
  readonly pictures: Pictures;
  readonly latest: TalkReport;
  readonly line: SpeakerLine;
}

function Desk({ context, library, stops, pictures, latest, line }: DeskProps) {
  const { post } = line;
  const desk = useMemo(() => deskState(context, library, stops, line), []);
  useEffect(() => desk.release, [desk]);
  const { script, whatIf } = desk;
  const tool = useSignal<Tool>("pointer");
  const typed = useSignal("");
  const say = (event: TalkEvent) => {
    typed.value = "";
    post({ kind: "event", event });
  };
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
  const clearPen = () => post({ kind: "mark", event: { kind: "clear" } });
  useSpeakerKeys(
    {
      say,
      ...typedStop(typed, (number) => say({ kind: "go", at: number - 1 })),
      // Full screen is the stage's own to take; a remote's start button begins the talk from here too.
      start: (fromHere) => {
        if (!fromHere && latest.began === null) say({ kind: "first" });
      },
      escape: () => {
        typed.value = "";
      },
      pause: () => post({ kind: "pause" }),
      point: () => {
        tool.value = "pointer";
      },
      pen: () => {
        tool.value = "pen";
      },
      clearPen,
    },
    hall ? hallKeys(hall) : [],
  );
  const then = stops[latest.talk.at + 1];
  const item = (name: string, label: string, onPress: () => void) => ({ name, label: t(label), onPress });
  return (
    <div class="speaker">
      <header class="speaker-head">
        <h1 class="unseen">{t("lecture.window")}</h1>
        <p>
          {typed.value
            ? t("lecture.goto", { number: typed.value })
            : t("lecture.position", { step: latest.talk.at + 1, count: latest.talk.count })}
        </p>
        <p>{t("lecture.stopTime", { time: minutesAndSeconds(secondsFor(stop)) })}</p>
        <Clock began={latest.began} minutes={latest.minutes} />
      </header>
      <main class="speaker-script">
        <div class="speaker-pictures">
          <SpeakerStage
            picture={line.picture}
            shown={shownAt(latest.talk)}
            tool={tool}
            onTool={(chosen) => {
              tool.value = chosen;
            }}
            onMark={(event) => post({ kind: "mark", event })}
          />
          <section aria-label={t("lecture.then")}>
            <p class="speaker-label">{t("lecture.then")}</p>
            {then && <NextPicture context={context} stop={then} pictures={pictures} />}
            <p class="speaker-then">{then ? nameOfStop(then) : t("lecture.ended")}</p>
          </section>
        </div>
        <div class="speaker-words">
          <h2>{nameOfStop(stop)}</h2>
          <p class="speaker-room" role="status">
            {roomSees(latest.talk)}
          </p>
          <Sentence stop={stop} voice={voice} />
          <PersonOf stop={stop} />
          {hall && asked && <AskedOfRoom question={asked.question} hall={hall} />}
          <HallPhones room={context.place.value.more.room ?? ""} />
          <SpeakerNotes stop={stop} voice={voice} />
        </div>
      </main>
      <SpeakerWhatIf
        session={context.session}
        script={script}
        whatIf={whatIf.now.value}
        onSend={(state) => {
          desk.sent(state);
          say({ kind: "aside", state });
        }}
        onScript={() => {
          say({ kind: "script" });
          script.restoreScene();
        }}
      />
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

/** What the window knows of its own: the script at the stage's place, and a what-if beside it. */
function deskState(
  { session }: Context,
  library: Library,
  stops: readonly FoundStop[],
  { report }: SpeakerLine,
) {
  const reader = report.peek()?.reader ?? 0;
  const at = computed(() => report.value?.talk.at ?? 0);
  const aside = computed(() => report.value?.talk.aside ?? null);
  const script = runScript(session, library, stops, at, reader);
  const whatIf = followWhatIf(session, script.stop);
  const kept = keepWhatIf(session, script, whatIf.now, {
    key: `${report.peek()?.list} ${reader}`,
    at,
    aside,
  });
  return {
    script,
    whatIf,
    sent: kept.sent,
    release() {
      kept.release();
      whatIf.release();
      script.release();
    },
  };
}

/** The words that stand on stage, where no question does. */
function Sentence({ stop, voice }: { readonly stop: FoundStop; readonly voice: Voice | null }) {
  const step = stepShown(stop);
  if (!step || !voice || (step.question && step.question.room !== false)) return null;
  return (
    <div class="speaker-sentence">
      <Script step={step} voice={voice} paragraphs={1} />
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
function useSpeakerKeys(
  acts: Omit<LectureActs, "fullScreen" | "whatIf" | "speaker" | "theme" | "keyList">,
  first: readonly Key[],
): void {
  const nothing = () => {};
  const keys = lectureKeys({
    ...acts,
    fullScreen: nothing,
    whatIf: nothing,
    speaker: nothing,
    theme: nothing,
    keyList: nothing,
  });
  useFreeFocus();
  useKeys([...first, ...keys], () => false);
}
