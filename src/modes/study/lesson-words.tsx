/** The words column: where one is, the step's words or its question, and the way on. */
import { useEffect, useRef } from "preact/hooks";
import { t } from "../../i18n/index.ts";
import type { Library } from "../../lesson/library/library.ts";
import { canAdvance, predictionFor } from "../../lesson/player.ts";
import type { StepReference } from "../../lesson/prose.ts";
import { entryAt } from "../../sim/checked/present.ts";
import { QuestionView } from "../../ui/lesson/question-view.tsx";
import { Script, StepCaution, TranslationNote } from "../../ui/lesson/script.tsx";
import type { LessonRun } from "../shared/lesson/lesson-run.ts";
import { voiceOf } from "../shared/lesson/voice-of.ts";
import { keptVersion } from "../shared/preferences.ts";
import type { Session } from "../shared/session.ts";
import { Ending } from "./ending.tsx";
import { Explained } from "./explained.tsx";
import { GoalList } from "./goal-list.tsx";
import type { KeptProgress } from "./kept-progress.ts";
import { WrittenTaskView } from "./written-task.tsx";

export interface LessonWordsProps {
  readonly run: LessonRun;
  readonly library: Library;
  readonly session: Session;
  readonly homeHref: string;
  /** None where a lesson is only looked at. */
  readonly kept?: KeptProgress;
  /** False where another place has the reader's hands: the cursor in a text being written. Default true. */
  readonly takesFocus?: boolean;
}

export function LessonWords({ run, library, session, homeHref, kept, takesFocus = true }: LessonWordsProps) {
  const { lesson } = run;
  const player = run.player.value;
  const { phase } = player;
  const step = entryAt(lesson.steps, run.shown.value);
  const follow = (to: StepReference) => {
    if (to.lesson === null || to.lesson === lesson.id) run.send({ kind: "go", step: to.step });
  };
  const voice = voiceOf(library, run.situation.value, keptVersion.value, follow);
  const asked = run.question.value;
  const heading = useRef<HTMLHeadingElement>(null);
  const place = `${phase === "again" ? asked?.key : step.id} ${phase}`;
  const first = useRef(true);
  useEffect(() => {
    // Reading goes on at the new step's title; the page's first step leaves focus where it is.
    if (takesFocus && !first.current) heading.current?.focus();
    first.current = false;
  }, [place]);

  if (phase === "end")
    return (
      <main class="lesson-words">
        <Ending run={run} library={library} heading={heading} homeHref={homeHref} kept={kept} />
      </main>
    );
  const question = (phase === "ask" || phase === "again") && asked && (
    <QuestionView
      key={place}
      question={asked.question}
      voice={
        phase === "again" ? voiceOf(library, run.questionSituation.value, keptVersion.value, null) : voice
      }
      editing={session}
      given={player.given}
      judgement={player.judgement}
      hints={player.hints}
      again={phase === "again"}
      onAnswer={(given) => void run.answer(given)}
      onHint={() => run.send({ kind: "hint" })}
      onWhy={(to) => run.send({ kind: "why", step: to })}
    />
  );
  return (
    <main class="lesson-words">
      <TranslationNote translation={lesson.translation} language={lesson.language} />
      <p class="position">{t("lesson.position", { step: player.step + 1, count: lesson.steps.length })}</p>
      <h2 ref={heading} tabIndex={-1} lang={phase === "again" ? undefined : lesson.language}>
        {phase === "again" ? t("lesson.kind.again") : step.title}
      </h2>
      {player.step === 0 && phase !== "again" && <GoalList lesson={lesson} version={voice.version} />}
      {phase === "watch" ? (
        <p>{t("lesson.watch")}</p>
      ) : (
        phase !== "again" && <Script step={step} voice={voice} />
      )}
      {phase === "read" && predictionFor(lesson, step) && <Explained run={run} voice={voice} />}
      {question}
      {(phase === "read" || phase === "ask") && step.task && voice.version === "technical" && (
        <WrittenTaskView
          key={step.id}
          task={step.task}
          voice={voice}
          language={step.technical?.language}
          text={player.written[step.id] ?? ""}
          onWrite={(text) => run.send({ kind: "write", step: step.id, text })}
        />
      )}
      {phase !== "again" && phase !== "watch" && <StepCaution step={step} voice={voice} />}
      {!canAdvance(lesson, player) && <p class="quiet-text">{t("lesson.predictFirst")}</p>}
      <nav class="lesson-way-on" aria-label={t("lesson.steps")}>
        <button
          type="button"
          aria-disabled={(player.step === 0 && phase !== "again" && phase !== "why") || undefined}
          onClick={() => run.send({ kind: "back" })}
        >
          {t("lesson.back")}
        </button>
        <button
          type="button"
          class={
            player.judgement || (phase !== "ask" && phase !== "again") || player.given !== null
              ? "main"
              : undefined
          }
          aria-disabled={!canAdvance(lesson, player) || undefined}
          onClick={() => run.send({ kind: "next" })}
        >
          {t(
            phase === "watch" ? "lesson.explain" : phase === "why" ? "lesson.backToQuestion" : "lesson.next",
          )}
        </button>
      </nav>
    </main>
  );
}
