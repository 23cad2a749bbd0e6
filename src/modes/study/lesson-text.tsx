/** A lesson in reading order as text alone, for reading and for paper: every step's words with the model's numbers. */
import { useMemo } from "preact/hooks";
import { t, unitSymbol } from "../../i18n/index.ts";
import { dealAnswers } from "../../lesson/judge/deal.ts";
import type { Lesson, Question, Step } from "../../lesson/lesson.ts";
import { namesRead, requestsOf, situationOf } from "../../lesson/model/situation.ts";
import { statesAround } from "../../lesson/model/states.ts";
import { VERSION } from "../../ui/app-version.ts";
import { Cautions } from "../../ui/cautions.tsx";
import { InlineView } from "../../ui/lesson/prose.tsx";
import { Script, StepCaution, TranslationNote } from "../../ui/lesson/script.tsx";
import { SourceList } from "../../ui/lesson/source-mark.tsx";
import type { Voice } from "../../ui/lesson/voice.ts";
import { printAs } from "../../ui/take-away/print-as.ts";
import { writePlace } from "../shared/address/place.ts";
import { knownAnswers } from "../shared/lesson/known-answers.ts";
import { voiceOf } from "../shared/lesson/voice-of.ts";
import { keptVersion } from "../shared/preferences.ts";
import { GoalList } from "./goal-list.tsx";
import type { StudyProps } from "./study-props.ts";

export function LessonText({
  context,
  library,
  kept,
  lesson: written,
}: StudyProps & { readonly lesson: Lesson }) {
  const { reader } = kept.progress.value;
  const lesson = useMemo(() => dealAnswers(written, reader), [written, reader]);
  const known = useMemo(() => knownAnswers(context.session.chain), [context.session]);
  const steps = useMemo(
    () =>
      lesson.steps.map((step, index) => {
        const states = statesAround(lesson, index);
        for (const request of requestsOf(namesRead(step), states)) known.want(request);
        return { step, states };
      }),
    [lesson],
  );
  const asked = steps.map(({ step, states }) => ({
    step,
    voice: voiceOf(library, situationOf(states, known.exactly), keptVersion.value, null),
  }));
  const back = writePlace({ ...context.place.value, more: {} });
  return (
    <main class="lesson-text">
      <p class="off-paper actions">
        <a class="button" href={back}>
          {t("study.toLesson")}
        </a>
        <button type="button" onClick={() => printAs(lesson.title, lesson.language)}>
          {t("study.print")}
        </button>
        <a class="button" href={writePlace({ ...context.place.value, more: { view: "handout" } })}>
          {t("take.handout")}
        </a>
      </p>
      <h1>{lesson.title}</h1>
      <TranslationNote translation={lesson.translation} language={lesson.language} />
      <p>{lesson.aim}</p>
      <GoalList lesson={lesson} version={keptVersion.value} />
      {asked.map(({ step, voice }) => {
        return (
          <section key={step.id} aria-labelledby={`text-${step.id}`}>
            <h2 id={`text-${step.id}`}>{step.title}</h2>
            <Script step={step} voice={voice} />
            {step.question && <AskedOnPaper question={step.question} voice={voice} />}
            {voice.version === "technical" && step.task && (
              <p class="asked">
                <strong>
                  <InlineView words={step.task.ask} voice={voice} />
                </strong>
              </p>
            )}
            <StepCaution step={step} voice={voice} />
          </section>
        );
      })}
      <SolutionsOnPaper asked={asked} />
      <h2>{t("lesson.remember")}</h2>
      <p>{lesson.remember}</p>
      {lesson.sources.length > 0 && (
        <>
          <h2>{t("lesson.sources")}</h2>
          <SourceList keys={lesson.sources} sources={library.sources} />
        </>
      )}
      <Cautions />
      <p>{t("study.made", { version: VERSION, date: new Date().toISOString().slice(0, 10) })}</p>
    </main>
  );
}

/** The question with its answers, unanswered: paper keeps no secret, and needs room for a pencil. */
function AskedOnPaper({ question, voice }: { readonly question: Question; readonly voice: Voice }) {
  const choices = question.kind === "order" ? question.items : "answers" in question ? question.answers : [];
  return (
    <div class="asked">
      <p>
        <strong>
          <InlineView words={question.ask} voice={voice} />
        </strong>
      </p>
      {"format" in question && (
        <p>
          <span class="to-fill" /> {unitSymbol(question.format.unit)}
        </p>
      )}
      <ul>
        {choices.map(({ id, say }) => (
          <li key={id}>
            <InlineView words={say} voice={voice} />
          </li>
        ))}
      </ul>
    </div>
  );
}

/** At the end, away from the questions: how each number is found, and model answers. */
function SolutionsOnPaper({ asked }: { readonly asked: readonly { step: Step; voice: Voice }[] }) {
  const solved = asked.flatMap(({ step: { id, title, question, task }, voice }) => {
    const lines = [
      ...(question?.kind === "number" ? question.solution : []),
      ...(voice.version === "technical" ? (task?.answer ?? []) : []),
    ];
    return lines.length > 0 ? [{ id, title, lines, voice }] : [];
  });
  if (solved.length === 0) return null;
  return (
    <section class="solutions" aria-labelledby="solutions">
      <h2 id="solutions">{t("lesson.solutions")}</h2>
      {solved.map(({ id, title, lines, voice }) => (
        <div key={id}>
          <h3>{title}</h3>
          <ol>
            {lines.map((line, index) => (
              <li key={index}>
                <InlineView words={line} voice={voice} />
              </li>
            ))}
          </ol>
        </div>
      ))}
    </section>
  );
}
