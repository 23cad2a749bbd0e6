/** What the hall sees: the scene, one sentence, two numbers; controls only when asked for. */
import { useComputed, useSignal } from "@preact/signals";
import { useEffect, useMemo } from "preact/hooks";
import { t } from "../../../i18n/index.ts";
import type { Step } from "../../../lesson/lesson.ts";
import { writeAddress } from "../../../state/address.ts";
import type { Editing } from "../../../ui/editing.ts";
import { KeyList } from "../../../ui/key-list.tsx";
import { QuestionView } from "../../../ui/lesson/question-view.tsx";
import { Script, StepCaution } from "../../../ui/lesson/script.tsx";
import type { Voice } from "../../../ui/lesson/voice.ts";
import { Panel } from "../../../ui/panel.tsx";
import { ParameterForm } from "../../../ui/parameter-form.tsx";
import { Help } from "../../shared/bar/help.tsx";
import { LanguageChoice } from "../../shared/bar/language-choice.tsx";
import { Notes } from "../../shared/bar/notes.tsx";
import { VersionChoice } from "../../shared/bar/version-choice.tsx";
import { figuresThatMatter } from "../../shared/lesson/figures-that-matter.ts";
import type { LessonRun } from "../../shared/lesson/lesson-run.ts";
import { mediaQuery } from "../../shared/media-query.ts";
import { hallVersion, lettersOn } from "../../shared/preferences.ts";
import type { Session } from "../../shared/session.ts";
import { StageView } from "../../shared/stage/stage-view.tsx";
import { useKeys } from "../../shared/use-keys.ts";
import { Invite } from "../audience/invite.tsx";
import { HallChart } from "../hall/hall-chart.tsx";
import { PenLayer } from "../pen/pen-layer.tsx";
import { PenSurface, type Tool } from "../pen/pen-surface.tsx";
import { PersonOf } from "../talk/own-person-words.tsx";
import { coversStage, nameOfStop, stepShown } from "../talk/stops.ts";
import { shownAt } from "../talk/talk.ts";
import { Changes } from "../talk/what-if-words.tsx";
import { useFreeFocus } from "../windows/free-focus.ts";
import { lectureKeys } from "../windows/lecture-keys.ts";
import { OwnSlide } from "./own-slide.tsx";
import { type RoomPanel, roomActs } from "./room-acts.ts";
import { RoomBar } from "./room-bar.tsx";
import { RoomFigures } from "./room-figures.tsx";
import { type RoomOptions, type RoomState, roomState } from "./room-state.ts";

/** CSS px: nothing in a hall is smaller; on a phone, whose reader is near, the picture needs the room */
const FLOOR = { hall: 24, hand: 13 } as const;
/** As in lecture.css. */
const inHand = mediaQuery("(max-height: 500px) and (min-aspect-ratio: 1), (max-width: 500px)");

export function Room(options: RoomOptions) {
  const { context } = options;
  const { session } = context;
  const room = useMemo(() => roomState(options), []);
  useEffect(() => room.release, [room]);
  const open = useSignal<RoomPanel | null>(null);
  const tool = useSignal<Tool | null>(null);
  const typed = useSignal("");
  const figures = useComputed(() =>
    figuresThatMatter(
      stepShown(room.script.stop.value),
      session.scene.value,
      session.chain.circulations.value,
    ),
  );
  const earlier = useComputed(() => {
    const before = room.whatIf.value?.before;
    return before ? figuresThatMatter(stepShown(room.script.stop.value), session.scene.value, before) : null;
  });
  const close = () => {
    open.value = null;
  };
  const acts = roomActs(context, room, { open, tool, typed });
  const keys = lectureKeys(acts);
  useFreeFocus();
  useKeys(keys, () => open.value === "help" || open.value === "keys");
  const talk = room.talk.value;
  const stop = room.script.stop.value;
  const step = stepShown(stop);
  const voice = room.script.voice.value;
  const run = room.script.run.value;
  return (
    <StageView context={context} floor={inHand.value ? FLOOR.hand : FLOOR.hall}>
      <main class={session.scene.value.beside.length > 0 ? "room side-by-side" : "room"}>
        <h1 class="unseen">{run?.lesson.title ?? nameOfStop(stop)}</h1>
        <RoomBar context={context} room={room} acts={acts} tool={tool.value} onHelp={acts.help} />
        {open.value === "whatIf" && <WhatIf session={session} room={room} onClose={close} />}
        <div class="clear" data-clear />
        <section class="room-words" aria-live="polite">
          <h2>{talk.aside === null ? nameOfStop(stop) : t("lecture.aside")}</h2>
          {talk.aside !== null && (
            <Changes whatIf={room.whatIf.value} request={session.scene.value.request} />
          )}
          {step && voice && run && (
            <>
              {talk.aside === null && <RoomWords {...{ session, step, run, voice }} />}
              {talk.aside === null && <HallChart hall={room.hall} voice={voice} />}
            </>
          )}
          {talk.aside === null && <PersonOf stop={stop} />}
        </section>
        {step?.caution && voice && (
          <div class="room-caution">
            <StepCaution step={step} voice={voice} />
          </div>
        )}
        {!coversStage(stop) && (
          <section class="room-figures" aria-label={t("bench.figures")}>
            <RoomFigures scene={session.scene.value.scene} figures={figures.value} earlier={earlier.value} />
          </section>
        )}
        {stop.kind !== "step" && coversStage(stop) && <OwnSlide stop={stop} pictures={options.pictures} />}
        {room.audience && <Invite audience={room.audience} hall={room.hall} />}
        <Notes session={session} />
        <p class="room-place">
          {typed.value
            ? t("lecture.goto", { number: typed.value })
            : t("lecture.position", { step: shownAt(talk) + 1, count: talk.count })}
        </p>
        <div class={`room-blank ${talk.blank}`} aria-hidden="true" />
      </main>
      <PenLayer marks={room.marks} />
      {tool.value && <PenSurface tool={tool.value} onMark={room.mark} />}
      {open.value === "help" && (
        <Help
          paragraphs={["help.pause", "lecture.help.clicker", "lecture.help.speaker", "help.sources"]}
          onKeys={acts.keyList}
          onClose={close}
        >
          <LanguageChoice address={context.address} />
          <VersionChoice
            version={hallVersion.value}
            onChoose={(version) => {
              hallVersion.value = version;
            }}
          />
        </Help>
      )}
      {open.value === "keys" && <KeyList table={keys} lettersOn={lettersOn} onClose={close} />}
    </StageView>
  );
}

/** A change made here is a what-if like one that the speaker's window sends. */
const shownAside = (session: Session, room: RoomState): Editing => ({
  scene: session.scene,
  settle: () => session.settle(),
  edit(subject, change) {
    const { request } = session.scene.peek();
    session.edit(subject, change);
    if (session.scene.peek().request !== request)
      room.say({ kind: "aside", state: writeAddress(session.scene.peek()) });
  },
});

/** Controls of the model beside the scene, and the way back to the script. */
function WhatIf(props: {
  readonly session: Session;
  readonly room: RoomState;
  readonly onClose: () => void;
}) {
  const { session, room, onClose } = props;
  return (
    <Panel title={t("lecture.whatIf")} onClose={onClose}>
      <ParameterForm editing={shownAside(session, room)} />
      <div class="actions">
        <button
          type="button"
          onClick={() => {
            room.say({ kind: "script" });
            onClose();
          }}
        >
          {t("lecture.script")}
        </button>
      </div>
    </Panel>
  );
}

interface RoomWordsProps {
  readonly session: Session;
  readonly step: Step;
  readonly run: LessonRun;
  readonly voice: Voice;
}

/** The step's question where the hall is asked one, else its first sentence. */
function RoomWords({ session, step, run, voice }: RoomWordsProps) {
  const question = step.question?.room === false ? null : run.question.value;
  if (!question) return <Script step={step} voice={voice} paragraphs={1} />;
  return (
    <QuestionView
      key={question.key}
      question={question.question}
      voice={voice}
      editing={session}
      given={run.player.value.given}
      judgement={run.player.value.judgement}
      hints={run.player.value.hints}
      again={false}
      pick
      onAnswer={(given) => void run.answer(given)}
      onHint={() => run.send({ kind: "hint" })}
      onWhy={null}
    />
  );
}
