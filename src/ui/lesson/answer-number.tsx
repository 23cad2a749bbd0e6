/** A problem with a number: typed, or picked from a few where nobody types, as in a hall and at a kiosk. */
import { formatQuantity, t } from "../../i18n/index.ts";
import { RIGHT_NUMBER } from "../../lesson/judge/judge-number.ts";
import type { Given, Judgement } from "../../lesson/judge/questions.ts";
import type { Answer, NumberQuestion } from "../../lesson/lesson.ts";
import { AnswerChoice } from "./answer-choice.tsx";
import { AnswerTyped } from "./answer-typed.tsx";
import { InlineView } from "./prose.tsx";
import type { Voice } from "./voice.ts";

export interface AnswerNumberProps {
  readonly question: NumberQuestion;
  readonly voice: Voice;
  readonly given: Given | null;
  readonly judgement: Judgement | null;
  readonly again: boolean;
  /** One of a few instead of typing. */
  readonly pick: boolean;
  readonly onAnswer: (given: Given) => void;
}

export function AnswerNumber({
  question,
  voice,
  given,
  judgement,
  again,
  pick,
  onAnswer,
}: AnswerNumberProps) {
  const locked = (judgement?.right ?? false) || (again && judgement !== null);
  if (!pick)
    return (
      <AnswerTyped
        ask={question.ask}
        format={question.format}
        given={typeof given === "number" ? given : null}
        {...{ voice, locked, onAnswer }}
      />
    );
  return (
    <AnswerChoice
      ask={question.ask}
      answers={numbersToPick(question, voice)}
      given={typeof given === "string" ? given : null}
      button="lesson.check"
      {...{ voice, locked, onAnswer }}
    />
  );
}

/** The right number and where the named mistakes lead, the lowest first; none while the model is at work. */
export function numbersToPick(question: NumberQuestion, voice: Voice): readonly Answer[] {
  const { unit, digits } = question.format;
  return [{ id: RIGHT_NUMBER, value: question.value, because: question.right }, ...question.mistakes]
    .flatMap(({ id, value, because }) => {
      const amount = voice.amount(value);
      return amount === null ? [] : [{ id, because, amount }];
    })
    .sort((a, b) => a.amount - b.amount)
    .map(({ id, because, amount }) => ({
      id,
      because,
      say: [{ kind: "text", text: formatQuantity(amount, unit, digits) }],
      right: id === RIGHT_NUMBER,
      show: null,
    }));
}

/** Open once the answer is right or there is no further try; before that, for whoever asks. */
export const WorkedSolution = ({
  question,
  voice,
  open,
}: {
  readonly question: NumberQuestion;
  readonly voice: Voice;
  readonly open: boolean;
}) => (
  <details class="solution" open={open}>
    <summary>{t("lesson.solution")}</summary>
    <ol>
      {question.solution.map((line, index) => (
        <li key={index}>
          <InlineView words={line} voice={voice} />
        </li>
      ))}
    </ol>
  </details>
);
