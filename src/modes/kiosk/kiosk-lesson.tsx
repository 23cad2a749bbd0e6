/** A lesson at the kiosk: short plain sentences, large buttons, read aloud on request, a thing to try. */
import { type Signal, useComputed, useSignal } from "@preact/signals";
import { useEffect, useMemo } from "preact/hooks";
import { t } from "../../i18n/index.ts";
import type { Lesson } from "../../lesson/lesson.ts";
import type { Library } from "../../lesson/library/library.ts";
import { entryAt } from "../../sim/checked/present.ts";
import { Cautions } from "../../ui/cautions.tsx";
import { QuestionView } from "../../ui/lesson/question-view.tsx";
import { Script, StepCaution } from "../../ui/lesson/script.tsx";
import { Notes } from "../shared/bar/notes.tsx";
import { isMoving, togglePlay } from "../shared/handles/play.ts";
import { runLesson } from "../shared/lesson/lesson-run.ts";
import { voiceOf } from "../shared/lesson/voice-of.ts";
import type { Context } from "../shared/mode.ts";
import { ReadAloud } from "../shared/words/read-aloud.tsx";
import { LargerButton } from "./larger-button.tsx";
import { TryIt } from "./try-it.tsx";

export interface KioskLessonProps {
  readonly context: Context;
  readonly library: Library;
  readonly lesson: Lesson;
  readonly larger: Signal<boolean>;
  /** This visit's: where the answers stand. */
  readonly reader: number;
  readonly onTopics: () => void;
  readonly onLeave: () => void;
}

export function KioskLesson({
  context,
  library,
  lesson,
  larger,
  reader,
  onTopics,
  onLeave,
}: KioskLessonProps) {
  const { session } = context;
  const run = useMemo(
    () => runLesson(session, lesson, { alone: false, reader, lessons: library.lessons }),
    [],
  );
  useEffect(() => run.release, [run]);
  const trying = useSignal(false);
  const voice = useComputed(() => voiceOf(library, run.situation.value, "plain", null));
  const { phase, given, judgement, hints } = run.player.value;
  const step = entryAt(lesson.steps, run.shown.value);
  const question = phase === "ask" ? run.question.value : null;
  const ended = phase === "end";
  const go = (kind: "next" | "back") => {
    trying.value = false;
    run.send({ kind });
  };
  return (
    <div class="kiosk-lesson">
      <div class="clear" data-clear />
      <main class="kiosk-words" aria-live="polite" lang={lesson.language}>
        <h1 class="unseen">{lesson.title}</h1>
        {ended ? (
          <>
            <h2>{t("lesson.remember")}</h2>
            <p class="script">{lesson.remember}</p>
            <Cautions />
          </>
        ) : (
          <>
            <div class="kiosk-read">
              <h2>{step.title}</h2>
              {trying.value ? (
                <TryIt editing={session} session={session} />
              ) : question ? (
                <QuestionView
                  key={question.key}
                  question={question.question}
                  voice={voice.value}
                  editing={session}
                  given={given}
                  judgement={judgement}
                  hints={hints}
                  again={false}
                  pick
                  onAnswer={(answer) => void run.answer(answer)}
                  onHint={() => run.send({ kind: "hint" })}
                  onWhy={(id) => run.send({ kind: "why", step: id })}
                />
              ) : (
                <Script step={step} voice={voice.value} paragraphs={2} />
              )}
            </div>
            {step.caution ? (
              <StepCaution step={step} voice={voice.value} />
            ) : (
              <p class="caution-short">{t("caution.short")}</p>
            )}
          </>
        )}
      </main>
      <nav class="kiosk-bar" aria-label={t("kiosk.bar")}>
        <button type="button" onClick={() => (run.shown.value === 0 && !ended ? onTopics() : go("back"))}>
          {t("lesson.back")}
        </button>
        <span class="kiosk-place">
          {t("lecture.position", { step: run.shown.value + 1, count: lesson.steps.length })}
        </span>
        <button type="button" class="main" onClick={() => (ended ? onTopics() : go("next"))}>
          {t(ended ? "kiosk.more" : "lesson.next")}
        </button>
        <button type="button" onClick={() => togglePlay(context)}>
          {t(isMoving(context) ? "transport.pause" : "transport.play")}
        </button>
        {!ended && (
          <button
            type="button"
            onClick={() => {
              trying.value = !trying.value;
              if (!trying.value) run.restoreScene();
            }}
          >
            {t(trying.value ? "kiosk.tried" : "kiosk.try")}
          </button>
        )}
        <ReadAloud words=".kiosk-words" language={lesson.language} subject={`${step.id} ${phase}`} />
        <LargerButton larger={larger} />
        <button type="button" class="kiosk-leave" onClick={onLeave}>
          {t("kiosk.again")}
        </button>
      </nav>
      <Notes session={session} />
    </div>
  );
}
