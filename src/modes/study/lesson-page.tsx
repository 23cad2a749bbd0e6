/** One lesson taken alone: predict, watch, explain; the words beside the stage, the questions among them. */
import { useComputed, useSignal } from "@preact/signals";
import { useEffect, useMemo, useRef } from "preact/hooks";
import { t } from "../../i18n/index.ts";
import type { Lesson } from "../../lesson/lesson.ts";
import { entryAt } from "../../sim/checked/present.ts";
import { releaseDye, setView } from "../../state/edit.ts";
import { showsField } from "../../state/scene-state.ts";
import { Switch } from "../../ui/choice.tsx";
import { KeyList } from "../../ui/key-list.tsx";
import { LedgerTable } from "../../ui/ledger-table.tsx";
import { StepList } from "../../ui/lesson/step-list.tsx";
import { Panel } from "../../ui/panel.tsx";
import { Toolbar } from "../../ui/toolbar.tsx";
import { Transport } from "../../ui/transport.tsx";
import { writePlace } from "../shared/address/place.ts";
import { Help } from "../shared/bar/help.tsx";
import { LanguageChoice } from "../shared/bar/language-choice.tsx";
import { Notes } from "../shared/bar/notes.tsx";
import { VersionChoice } from "../shared/bar/version-choice.tsx";
import { isMoving, togglePlay } from "../shared/handles/play.ts";
import type { LessonRun } from "../shared/lesson/lesson-run.ts";
import type { Context } from "../shared/mode.ts";
import { keptVersion, largerWords, lettersOn } from "../shared/preferences.ts";
import { StageView } from "../shared/stage/stage-view.tsx";
import { useKeys } from "../shared/use-keys.ts";
import { ReadAloud } from "../shared/words/read-aloud.tsx";
import { LessonWords } from "./lesson-words.tsx";
import { studyKeys } from "./study-keys.ts";
import type { StudyProps } from "./study-props.ts";
import { followPlace, startStudy } from "./study-run.ts";

export function LessonPage({ context, library, kept, lesson }: StudyProps & { readonly lesson: Lesson }) {
  const { session, place } = context;
  // The same lesson in another language goes on where it is.
  const last = useRef<LessonRun | null>(null);
  const run = useMemo(() => {
    const before = last.current?.lesson.id === lesson.id ? last.current.player.peek() : undefined;
    last.current = startStudy({ context, library, kept, lesson }, before);
    return last.current;
  }, [lesson]);
  const open = useSignal<"steps" | "help" | "keys" | null>(null);
  useEffect(() => run.release, [run]);
  useEffect(() => followPlace(context, run), [run]);
  const keys = studyKeys(context, run, () => {
    open.value = "keys";
  });
  useKeys(keys, () => open.value === "keys" || open.value === "help");
  const close = () => {
    open.value = null;
  };
  const covered = useComputed(() => run.player.value.phase === "again" || run.player.value.phase === "end");
  const probing = useSignal(false);
  const field = showsField(session.scene.value);
  const { view } = session.scene.value;
  const ledger = session.chain.circulations.value[0]?.pathway.ledger;
  const home = writePlace({ ...place.value, lesson: "", step: "", more: {}, state: "" });
  return (
    <StageView context={context} floor={13} probing={probing.value && field && !covered.value}>
      <div class={covered.value ? "study covered" : "study"}>
        <header class="top">
          <a class="wordmark" href={home}>
            {t("study.lessons")}
          </a>
          <h1>{lesson.title}</h1>
          <VersionChoice
            quietLabel
            version={keptVersion.value}
            onChoose={(version) => {
              keptVersion.value = version;
            }}
          />
          <Toolbar
            label={t("study.bar")}
            items={[
              {
                name: "steps",
                label: t("lesson.steps"),
                expanded: open.value === "steps",
                onPress: () => {
                  open.value = open.value === "steps" ? null : "steps";
                },
              },
              {
                name: "help",
                label: t("bench.help"),
                onPress: () => {
                  open.value = "help";
                },
              },
            ]}
          />
        </header>
        {open.value === "steps" && <Steps {...{ context, run }} onClose={close} />}
        <LessonWords run={run} library={library} session={session} homeHref={home} kept={kept} />
        <div class="clear" data-clear />
        {view.ledger && ledger && !covered.value && (
          <section class="study-ledger" aria-label={t("bench.numbers")}>
            <LedgerTable
              rows={ledger}
              focus={view.focus}
              onFocus={(focus) => session.edit("focus", setView({ focus }))}
            />
          </section>
        )}
        <footer class="foot">
          <Transport
            moving={isMoving(context)}
            onTogglePause={() => togglePlay(context)}
            onDye={field ? () => session.edit("dye", releaseDye) : undefined}
            probe={
              field && !covered.value
                ? {
                    on: probing.value,
                    onToggle: () => {
                      probing.value = !probing.value;
                    },
                  }
                : undefined
            }
          />
          {!covered.value && (
            <ReadAloud
              words=".lesson-words"
              language={lesson.language}
              subject={`${run.shown.value} ${run.player.value.phase}`}
            />
          )}
          <p class="caution-short">{t("caution.short")}</p>
        </footer>
        <Notes session={session} />
      </div>
      {open.value === "help" && (
        <Help
          paragraphs={["study.help.predict", "study.help.numbers"]}
          onKeys={() => {
            open.value = "keys";
          }}
          onClose={close}
        >
          <LanguageChoice address={context.address} />
        </Help>
      )}
      {open.value === "keys" && <KeyList table={keys} lettersOn={lettersOn} onClose={close} />}
    </StageView>
  );
}

interface StepsProps {
  readonly context: Context;
  readonly run: LessonRun;
  readonly onClose: () => void;
}

/** The lesson's steps to go to, and its other ways of being read. */
function Steps({ context: { place }, run, onClose }: StepsProps) {
  const { lesson, player } = run;
  return (
    <Panel title={t("lesson.steps")} onClose={onClose}>
      <StepList
        lesson={lesson}
        current={entryAt(lesson.steps, player.value.step).id}
        seen={player.value.seen}
        onGo={(step) => {
          run.send({ kind: "go", step });
          onClose();
        }}
      />
      <a href={writePlace({ ...place.value, more: { view: "text" } })}>{t("study.asText")}</a>
      <Switch
        label={t("study.larger")}
        on={largerWords.value}
        onChange={(on) => {
          largerWords.value = on;
        }}
      />
    </Panel>
  );
}
