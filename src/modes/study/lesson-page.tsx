/** One lesson taken alone: predict, watch, explain; the words beside the stage, the questions among them. */
import { useComputed, useSignal } from "@preact/signals";
import { useEffect, useLayoutEffect, useMemo } from "preact/hooks";
import { t } from "../../i18n/index.ts";
import { findStep, type Lesson } from "../../lesson/lesson.ts";
import { progressOf } from "../../lesson/player.ts";
import { dueForRecall, withLesson } from "../../lesson/progress.ts";
import { parseReference } from "../../lesson/read-prose.ts";
import { releaseDye, setView } from "../../state/edit.ts";
import { showsField } from "../../state/scene-state.ts";
import { Choice, Switch } from "../../ui/choice.tsx";
import { KeyList } from "../../ui/key-list.tsx";
import { listenForKeys } from "../../ui/keys.ts";
import { LedgerTable } from "../../ui/ledger-table.tsx";
import { StepList } from "../../ui/lesson/step-list.tsx";
import { TELLINGS } from "../../ui/lesson/voice.ts";
import { Panel } from "../../ui/panel.tsx";
import { Toolbar } from "../../ui/toolbar.tsx";
import { Transport } from "../../ui/transport.tsx";
import { Help } from "../shared/help.tsx";
import { runLesson } from "../shared/lesson/lesson-run.ts";
import { Notes } from "../shared/notes.tsx";
import { writePlace } from "../shared/place.ts";
import { isMoving, togglePlay } from "../shared/play.ts";
import { keptTelling, largerWords, lettersOn } from "../shared/preferences.ts";
import { ReadAloud } from "../shared/read-aloud.tsx";
import { StageView } from "../shared/stage-view.tsx";
import { LessonWords } from "./lesson-words.tsx";
import type { StudyProps } from "./study-home.tsx";
import { studyKeys } from "./study-keys.ts";

export function LessonPage({ context, library, kept, lesson }: StudyProps & { readonly lesson: Lesson }) {
  const { session, place } = context;
  const run = useMemo(() => startRun({ context, library, kept, lesson }), [lesson]);
  const open = useSignal<"steps" | "help" | "keys" | null>(null);
  useEffect(() => run.release, [run]);
  useEffect(() => followPlace(context, lesson, run), [run]);
  const keys = studyKeys(context, run, () => {
    open.value = "keys";
  });
  useLayoutEffect(
    () =>
      listenForKeys(
        () => (open.value === "keys" || open.value === "help" ? [] : keys),
        () => lettersOn.value,
      ),
    [run],
  );
  const close = () => {
    open.value = null;
  };
  const covered = useComputed(() => run.player.value.phase === "again" || run.player.value.phase === "end");
  const { view } = session.scene.value;
  const ledger = session.chain.circulations.value[0]?.pathway.ledger;
  const home = writePlace({ ...place.value, lesson: "", step: "", more: {}, state: "" });
  return (
    <StageView context={context} floor={13}>
      <div class={covered.value ? "study covered" : "study"}>
        <header class="top">
          <a class="wordmark" href={home}>
            {t("study.lessons")}
          </a>
          <h1>{lesson.title}</h1>
          <Choice
            label={t("lesson.telling")}
            quietLabel
            value={keptTelling.value}
            words={TELLINGS}
            nameOf={(name) => t(`lesson.telling.${name}`)}
            onChoose={(name) => {
              keptTelling.value = name;
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
        {open.value === "steps" && (
          <Panel title={t("lesson.steps")} onClose={close}>
            <StepList
              lesson={lesson}
              current={lesson.steps[run.player.value.step]!.id}
              seen={run.player.value.seen}
              onGo={(step) => {
                run.send({ kind: "go", step });
                close();
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
        )}
        <LessonWords run={run} library={library} session={session} homeHref={home} />
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
            onDye={showsField(session.scene.value) ? () => session.edit("dye", releaseDye) : undefined}
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
        />
      )}
      {open.value === "keys" && <KeyList table={keys} lettersOn={lettersOn} onClose={close} />}
    </StageView>
  );
}

/** Begins where the address says, else where an earlier visit stopped; questions of earlier days come first. */
function startRun({ context, library, kept, lesson }: StudyProps & { readonly lesson: Lesson }) {
  const progress = kept.progress.peek();
  const at = stepIn(lesson, context.place.peek().step);
  const known = (key: string) => {
    const reference = parseReference(key);
    const from = reference && library.lessons.find(({ id }) => id === reference.lesson);
    if (!from) return [];
    const question = from.steps[findStep(from, reference.step)]?.question;
    return question && question.kind !== "goal"
      ? [{ ...reference, lesson: reference.lesson === lesson.id ? null : reference.lesson }]
      : [];
  };
  const due =
    at === undefined ? dueForRecall(progress, new Date().toISOString().slice(0, 10)).flatMap(known) : [];
  return runLesson(context.session, lesson, {
    alone: true,
    reader: progress.reader,
    earlier: progress.lessons[lesson.id],
    at,
    due,
    lessons: library.lessons,
    onProgress: (player) => {
      const next = progressOf(lesson, player);
      kept.keep(
        withLesson(kept.progress.peek(), lesson.id, next),
        `${lesson.id}#${next.step}`,
        library.lessons.map(({ id }) => id),
      );
    },
  });
}

/** A step by id or by number; undefined when the address names none. */
function stepIn(lesson: Lesson, step: string): string | undefined {
  return lesson.steps.find(({ id }) => id === step)?.id ?? lesson.steps[Number(step) - 1]?.id;
}

/** The address follows the step, and the step an address that someone went to. */
function followPlace(
  { place }: StudyProps["context"],
  lesson: Lesson,
  run: ReturnType<typeof runLesson>,
): () => void {
  const idNow = () => lesson.steps[run.player.peek().step]!.id;
  // First: someone may have gone on between the lesson opening and now.
  const stopReading = place.subscribe(({ lesson: where, step }) => {
    const wanted = stepIn(lesson, step);
    if (where !== lesson.id || wanted === undefined || wanted === idNow()) return;
    run.send({ kind: "go", step: wanted });
    if (idNow() !== wanted) place.value = { ...place.peek(), step: idNow() };
  });
  const stopWriting = run.player.subscribe(() => {
    const step = idNow();
    const now = place.peek();
    if (now.lesson === lesson.id && now.step !== step) place.value = { ...now, step };
  });
  return () => {
    stopWriting();
    stopReading();
  };
}
