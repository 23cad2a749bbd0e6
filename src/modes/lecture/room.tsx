/** What the hall sees: the scene, one sentence, two numbers; controls only when asked for. */
import { useComputed, useSignal } from "@preact/signals";
import { useEffect, useLayoutEffect, useMemo } from "preact/hooks";
import { t } from "../../i18n/index.ts";
import { writeAddress } from "../../state/address.ts";
import { KeyList } from "../../ui/key-list.tsx";
import { listenForKeys } from "../../ui/keys.ts";
import { QuestionView } from "../../ui/lesson/question-view.tsx";
import { Script, StepCaution } from "../../ui/lesson/script.tsx";
import { Panel } from "../../ui/panel.tsx";
import { ParameterForm } from "../../ui/parameter-form.tsx";
import { Help } from "../shared/help.tsx";
import { figuresThatMatter } from "../shared/lesson/figures-that-matter.ts";
import { Notes } from "../shared/notes.tsx";
import { togglePlay } from "../shared/play.ts";
import { lettersOn } from "../shared/preferences.ts";
import { StageView } from "../shared/stage-view.tsx";
import { toggleFullScreen } from "./full-screen.ts";
import { lectureKeys } from "./lecture-keys.ts";
import { Pointer } from "./pointer.tsx";
import { RoomBar } from "./room-bar.tsx";
import { RoomFigures } from "./room-figures.tsx";
import { type RoomOptions, roomState } from "./room-state.ts";
import { shownAt } from "./talk.ts";

/** CSS px: nothing in a hall is smaller */
const FLOOR = 24;

export function Room(options: RoomOptions) {
  const { context } = options;
  const { session, theme } = context;
  const room = useMemo(() => roomState(options), []);
  useEffect(() => room.release, [room]);
  const open = useSignal<"help" | "keys" | "whatIf" | null>(null);
  const pointing = useSignal(false);
  const typed = useSignal("");
  const figures = useComputed(() =>
    figuresThatMatter(room.script.stop.value.step, session.scene.value, session.chain.circulations.value),
  );
  const close = () => {
    open.value = null;
  };
  const show = (name: "help" | "keys" | "whatIf") => () => {
    open.value = open.value === name ? null : name;
  };
  const acts = {
    say(event: Parameters<typeof room.say>[0]) {
      typed.value = "";
      room.begin();
      room.say(event);
    },
    fullScreen: toggleFullScreen,
    start(fromHere: boolean) {
      // A remote's one button sends F5 and Esc in turn: only the first F5 of a talk goes to its start.
      if (!fromHere && !room.hasBegun()) room.say({ kind: "first" });
      room.begin();
      if (!document.fullscreenElement) toggleFullScreen();
    },
    pause: () => togglePlay(context),
    point() {
      pointing.value = !pointing.value;
      if (!pointing.value) room.say({ kind: "unpoint" });
    },
    whatIf: show("whatIf"),
    speaker: room.openSpeaker,
    theme() {
      theme.value = theme.value === "dark" ? "light" : "dark";
    },
    digit(digit: string) {
      typed.value = `${typed.value}${digit}`.slice(-3);
    },
    enter() {
      const number = Number(typed.value);
      typed.value = "";
      if (!number) return false;
      room.say({ kind: "go", at: number - 1 });
      return true;
    },
    escape() {
      typed.value = "";
      close();
    },
    keyList: show("keys"),
  };
  const keys = lectureKeys(acts);
  // Before the first picture: whoever sees the page may press a key.
  useLayoutEffect(
    () =>
      listenForKeys(
        () => (open.value === "help" || open.value === "keys" ? [] : keys),
        () => lettersOn.value,
      ),
    [],
  );
  const talk = room.talk.value;
  const { lesson, step } = room.script.stop.value;
  const run = room.script.run.value;
  const voice = room.script.voice.value;
  const question = step.question?.room === false ? null : run.question.value;
  return (
    <StageView context={context} floor={FLOOR}>
      <main class={session.scene.value.beside.length > 0 ? "room abreast" : "room"}>
        <h1 class="unseen">{lesson.title}</h1>
        <RoomBar context={context} room={room} acts={acts} pointing={pointing.value} onHelp={show("help")} />
        {open.value === "whatIf" && (
          <Panel title={t("lecture.whatIf")} onClose={close}>
            <ParameterForm editing={session} />
            <div class="actions">
              <button
                type="button"
                onClick={() => {
                  room.say({ kind: "aside", state: writeAddress(session.scene.value) });
                  room.say({ kind: "script" });
                  close();
                }}
              >
                {t("lecture.script")}
              </button>
            </div>
          </Panel>
        )}
        <div class="clear" data-clear />
        <section class="room-words" aria-live="polite">
          <h2>{talk.aside === null ? step.title : t("lecture.aside")}</h2>
          {question && talk.aside === null ? (
            <QuestionView
              key={question.key}
              question={question.question}
              voice={voice}
              editing={session}
              given={run.player.value.given}
              judgement={run.player.value.judgement}
              hints={run.player.value.hints}
              again={false}
              onAnswer={(given) => void run.answer(given)}
              onHint={() => run.send({ kind: "hint" })}
              onWhy={null}
            />
          ) : (
            talk.aside === null && <Script lesson={lesson} step={step} voice={voice} paragraphs={1} />
          )}
          <StepCaution step={step} voice={voice} />
        </section>
        <section class="room-figures" aria-label={t("bench.figures")}>
          <RoomFigures figures={figures.value} />
        </section>
        <Notes session={session} />
        <p class="room-place">
          {typed.value
            ? t("lecture.goto", { number: typed.value })
            : t("lecture.position", { step: shownAt(talk) + 1, count: talk.count })}
        </p>
        <div class={`room-blank ${talk.blank}`} aria-hidden="true" />
      </main>
      <Pointer talk={room.talk} on={pointing.value} onPoint={(at) => room.say({ kind: "point", at })} />
      {open.value === "help" && (
        <Help
          paragraphs={["help.pause", "lecture.help.clicker", "lecture.help.speaker", "help.sources"]}
          onKeys={show("keys")}
          onClose={close}
        />
      )}
      {open.value === "keys" && <KeyList table={keys} lettersOn={lettersOn} onClose={close} />}
    </StageView>
  );
}
