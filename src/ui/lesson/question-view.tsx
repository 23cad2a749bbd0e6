/** A question of any kind with its hints and what the answer brought. */

import { formatQuantity, t } from "../../i18n/index.ts";
import type { Question } from "../../lesson/lesson.ts";
import type { Given, Judgement } from "../../lesson/questions.ts";
import { present } from "../../sim/checked/present.ts";
import type { Editing } from "../editing.ts";
import { AnswerChoice } from "./answer-choice.tsx";
import { AnswerEstimate } from "./answer-estimate.tsx";
import { AnswerGoal } from "./answer-goal.tsx";
import { AnswerOrder } from "./answer-order.tsx";
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
        />
      )}
    </section>
  );
}

function AnswerOf({ question, voice, editing, given, judgement, again, onAnswer }: QuestionViewProps) {
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
        <AnswerEstimate {...{ question, voice, onAnswer }} given={typeof given === "number" ? given : null} />
      );
    case "order":
      return <AnswerOrder {...{ question, voice, onAnswer }} given={Array.isArray(given) ? given : null} />;
    case "goal":
      return <AnswerGoal {...{ question, voice, editing, onAnswer }} />;
  }
}

/** The model's own answer, shown where the reason alone does not give it. */
function truthOf(question: Question, { right, truth }: Judgement, voice: Voice) {
  if (question.kind === "estimate" && typeof truth === "number") {
    return t("lesson.truth", { value: formatQuantity(truth, question.format.unit, question.format.digits) });
  }
  if (question.kind !== "order" || right || !Array.isArray(truth)) return undefined;
  return (
    <>
      {t("lesson.truthOrder")}{" "}
      {truth.map((id, index) => (
        <span key={id}>
          {index > 0 ? ", " : ""}
          <InlineView words={present(question.items.find((item) => item.id === id)).say} voice={voice} />
        </span>
      ))}
    </>
  );
}
