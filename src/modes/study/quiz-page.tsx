/** The course quiz: one question after the other beside its scene, then what came of it. */
import { useEffect, useMemo, useRef } from "preact/hooks";
import { t } from "../../i18n/index.ts";
import { quizOf } from "../../lesson/judge/quiz.ts";
import { stepOfKey } from "../../lesson/lesson.ts";
import { QuestionView } from "../../ui/lesson/question-view.tsx";
import { TranslationNote } from "../../ui/lesson/script.tsx";
import { AT_HOME, writePlace } from "../shared/address/place.ts";
import { Notes } from "../shared/bar/notes.tsx";
import { voiceOf } from "../shared/lesson/voice-of.ts";
import { keptVersion } from "../shared/preferences.ts";
import { StageView } from "../shared/stage/stage-view.tsx";
import { type QuizItem, type QuizRun, startQuiz } from "./quiz-run.ts";
import type { StudyProps } from "./study-props.ts";

export function QuizPage(props: StudyProps) {
  const { context } = props;
  const run = useMemo(() => startQuiz(props), []);
  useEffect(() => run.release, [run]);
  const item = run.item.value;
  const home = writePlace({ ...AT_HOME, language: context.place.value.language, mode: "study" });
  return (
    <StageView context={context} floor={13}>
      <div class={item ? "study" : "study covered"}>
        <header class="top">
          <a class="wordmark" href={home}>
            {t("study.lessons")}
          </a>
          <h1>{t("study.quiz")}</h1>
        </header>
        <main class="lesson-words">
          {item ? (
            <Asked key={item.key} {...props} run={run} item={item} />
          ) : (
            <Result {...props} run={run} home={home} />
          )}
        </main>
        <div class="clear" data-clear />
        <footer class="foot">
          <p class="caution-short">{t("caution.short")}</p>
        </footer>
        <Notes session={context.session} />
      </div>
    </StageView>
  );
}

type AskedProps = StudyProps & { readonly run: QuizRun; readonly item: QuizItem };

function Asked({ context, library, kept, run, item }: AskedProps) {
  const { lesson, step, question, situation } = item;
  const keys = run.keys.value;
  const judgement = run.judgement.value;
  const done = Object.keys(quizOf(kept.progress.value).given).length;
  const heading = useRef<HTMLHeadingElement>(null);
  useEffect(() => heading.current?.focus(), []);
  return (
    <>
      <TranslationNote translation={lesson.translation} language={lesson.language} />
      <p class="position">
        {t("study.quiz.position", {
          place: Math.min(done + (judgement ? 0 : 1), keys.length),
          count: keys.length,
        })}
      </p>
      <h2 ref={heading} tabIndex={-1} lang={lesson.language}>
        {lesson.title}: {step.title}
      </h2>
      <QuestionView
        question={question}
        voice={voiceOf(library, situation, keptVersion.value, null)}
        editing={context.session}
        given={run.given.value}
        judgement={judgement}
        hints={run.hints.value}
        again
        onAnswer={(given) => void run.answer(given)}
        onHint={run.hint}
        onWhy={null}
      />
      <nav class="lesson-way-on" aria-label={t("study.quiz")}>
        <button
          type="button"
          class={judgement ? "main quiz-next" : "quiz-next"}
          aria-disabled={!judgement || undefined}
          onClick={() => judgement && run.next()}
        >
          {t("lesson.next")}
        </button>
      </nav>
    </>
  );
}

function Result({
  context,
  library,
  kept,
  run,
  home,
}: StudyProps & { readonly run: QuizRun; readonly home: string }) {
  const quiz = quizOf(kept.progress.value);
  const latest = quiz.results.at(-1);
  const missed = run.keys.value.filter((key) => quiz.given[key] === false);
  const language = context.place.value.language;
  return (
    <>
      <h2>{t("study.quiz.done")}</h2>
      {latest && (
        <p class="remember">{t("study.quiz.result", { right: latest.right, asked: latest.asked })}</p>
      )}
      {missed.length > 0 && (
        <>
          <h3>{t("study.quiz.missed")}</h3>
          <ul class="quiz-missed">
            {missed.flatMap((key) => {
              const found = stepOfKey(library.lessons, key);
              if (!found) return [];
              const { lesson, step } = found;
              return [
                <li key={key} lang={lesson.language}>
                  <a
                    href={writePlace({
                      ...AT_HOME,
                      language,
                      mode: "study",
                      lesson: lesson.id,
                      step: step.id,
                    })}
                  >
                    {lesson.title}: {step.title}
                  </a>
                </li>,
              ];
            })}
          </ul>
        </>
      )}
      <nav class="lesson-way-on" aria-label={t("study.quiz")}>
        <button type="button" onClick={run.again}>
          {t("study.quiz.again")}
        </button>
        <a class="button main" href={home}>
          {t("study.lessons")}
        </a>
      </nav>
    </>
  );
}
