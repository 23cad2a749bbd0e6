/** A question of any kind with its hints and what the answer brought. */

import { formatQuantity, t } from "../../i18n/index.ts";
import { isJudgedByModel } from "../../lesson/judge/judged-by-model.ts";
import type { Given, Judgement } from "../../lesson/judge/questions.ts";
import type { NumberQuestion, Question } from "../../lesson/lesson.ts";
import { present } from "../../sim/checked/present.ts";
import type { Editing } from "../editing.ts";
import { AnswerChoice } from "./answer-choice.tsx";
import { AnswerGoal } from "./answer-goal.tsx";
import { AnswerNumber, WorkedSolution } from "./answer-number.tsx";
import { AnswerOrder } from "./answer-order.tsx";
import { AnswerTyped } from "./answer-typed.tsx";
import { Feedback } from "./feedback.tsx";
import { InlineView } from "./prose.tsx";
import type { Voice } from "./voice.ts";

export interface QuestionViewProps {
  readonly question: Question;
  readonly voice: Voice;
  readonly editing: Editing;
  readonly given: Given | null;
  readonly judgement: Judgement | null;
  /** How many hints are open. */
  readonly hints: number;
  /** Asked once more, without the scene: one try. */
  readonly again: boolean;
  /** Nothing is typed here, as in a hall and at a kiosk: numbers are picked from a few. */
  readonly pick?: boolean;
  readonly onAnswer: (given: Given) => void;
  readonly onHint: () => void;
  readonly onWhy: ((step: string) => void) | null;
}

export function QuestionView(props: QuestionViewProps) {
  const { question, voice, given, judgement, hints, again, onHint, onWhy } = props;
  const predicted = question.kind === "predict" && !again && given !== null;
  const closed = again && judgement !== null;
  return (
    <section class="question" aria-label={t(`lesson.kind.${again ? "again" : question.kind}`)}>
      {!again && <p class="question-kind">{t(`lesson.kind.${question.kind}`)}</p>}
      <AnswerOf {...props} />
      {question.hints.slice(0, hints).map((hint, index) => (
        <p class="hint" key={index}>
          <InlineView words={hint} voice={voice} />
        </p>
      ))}
      {hints < question.hints.length && !predicted && !closed && !judgement?.right && (
        <button type="button" class="quiet" onClick={onHint}>
          {t("lesson.hint")}
        </button>
      )}
      {predicted && <p class="locked">{t("lesson.locked")}</p>}
      {judgement && (
        <Feedback
          judgement={judgement}
          voice={voice}
          truth={truthOf(question, judgement, voice)}
          onWhy={again ? null : onWhy}
          verdict={verdictOf(question, judgement)}
          {...(question.kind === "number" ? ofNumber(question, judgement, given, voice) : {})}
        />
      )}
      {judgement && question.kind === "number" && (
        <WorkedSolution question={question} voice={voice} open={closed || (judgement.right && !props.pick)} />
      )}
    </section>
  );
}

function AnswerOf(props: QuestionViewProps) {
  const { question, voice, editing, given, judgement, again, pick = false, onAnswer } = props;
  switch (question.kind) {
    case "predict":
    case "choose": {
      const predict = question.kind === "predict" && !again;
      const locked = predict ? given !== null : (judgement?.right ?? false) || (again && judgement !== null);
      return (
        <AnswerChoice
          ask={question.ask}
          answers={question.answers}
          voice={voice}
          given={typeof given === "string" ? given : null}
          locked={locked}
          button={predict ? "lesson.lock" : "lesson.check"}
          onAnswer={onAnswer}
        />
      );
    }
    case "estimate":
      return (
        <AnswerTyped
          ask={question.ask}
          format={question.format}
          locked={again && judgement !== null}
          given={typeof given === "number" ? given : null}
          {...{ voice, onAnswer }}
        />
      );
    case "number":
      return <AnswerNumber {...{ question, voice, given, judgement, again, pick, onAnswer }} />;
    case "order":
      return <AnswerOrder {...{ question, voice, onAnswer }} given={Array.isArray(given) ? given : null} />;
    case "goal":
      return <AnswerGoal {...{ question, voice, editing, onAnswer }} />;
  }
}

/** Of an answer that the author judges: the model has no part in it. */
export const verdictOf = (question: Question, { right }: Judgement): string | undefined =>
  isJudgedByModel(question) ? undefined : t(right ? "lesson.right" : "lesson.another");

/** The model's own answer, shown where the reason alone does not give it. */
function truthOf(question: Question, { right, truth }: Judgement, voice: Voice) {
  if (question.kind === "estimate" && typeof truth === "number") {
    return t("lesson.truth", { value: formatQuantity(truth, question.format.unit, question.format.digits) });
  }
  if (question.kind !== "order" || right || !Array.isArray(truth)) return undefined;
  return (
    <>
      {t(isJudgedByModel(question) ? "lesson.truthOrder" : "lesson.rightOrder")}{" "}
      {truth.map((id, index) => (
        <span key={id}>
          {index > 0 ? ", " : ""}
          <InlineView words={present(question.items.find((item) => item.id === id)).say} voice={voice} />
        </span>
      ))}
    </>
  );
}

/** What was typed, as it was read, and the name of the mistake that it shows. */
function ofNumber({ format }: NumberQuestion, judgement: Judgement, given: Given | null, voice: Voice) {
  const typed =
    typeof given === "number"
      ? { given: t("lesson.number.typed", { value: formatQuantity(given, format.unit, digitsTyped(given)) }) }
      : {};
  if (judgement.mistake)
    return { ...typed, verdict: <InlineView words={judgement.mistake.say} voice={voice} /> };
  return { ...typed, verdict: t(judgement.right ? "lesson.number.right" : "lesson.number.wrong") };
}

/** All that were typed, so that a sign misread as one of thousands is seen. */
const digitsTyped = (value: number): number => Math.min(6, (String(value).split(".")[1] ?? "").length);
