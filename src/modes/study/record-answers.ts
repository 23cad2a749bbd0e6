/** One answered question of a learner's record in words: what was asked with its numbers, what was given, what is right. */
import { digitsOfStep, formatQuantity, t } from "../../i18n/index.ts";
import { rightAnswer, rightOrder } from "../../lesson/judge/questions.ts";
import type { Lesson, OrderQuestion, Question, Words } from "../../lesson/lesson.ts";
import { type Answered, situationOf, statesOfQuestion } from "../../lesson/model/situation.ts";
import { statesAround } from "../../lesson/model/states.ts";
import type { Attempt } from "../../lesson/progress/progress.ts";
import { inlinesOf, wordsOf } from "../../lesson/prose.ts";
import { entryAt, present } from "../../sim/checked/present.ts";
import { findParameter } from "../../sim/parameters/parameters.ts";
import { formatFigure, numberIn } from "../../ui/lesson/voice.ts";

export interface AnswerInWords {
  readonly asked: string;
  readonly given: string;
  /** null where the answer given was right, or none is the one right answer. */
  readonly right: string | null;
  /** The mistake that a typed number shows. */
  readonly mistake: string | null;
}

export function answerInWords(
  lesson: Lesson,
  index: number,
  attempt: Attempt,
  answered: Answered,
): AnswerInWords {
  const question = present(entryAt(lesson.steps, index).question);
  const situation = situationOf(statesAround(lesson, index), answered);
  // A number stands as the learner saw it.
  const inWords: InWords = (words) =>
    wordsOf(words, (figure) => {
      const kept = attempt.numbers?.[figure.written];
      return kept === undefined ? numberIn(situation, figure) : formatFigure(kept, figure);
    });
  return {
    asked: inWords(question.ask),
    given: givenInWords(question, attempt.given, inWords),
    right: rightInWords(lesson, index, attempt, answered, inWords),
    mistake: mistakeInWords(question, attempt),
  };
}

type InWords = (words: Words) => string;

function givenInWords(question: Question, given: Attempt["given"], inWords: InWords): string {
  if (Array.isArray(given)) return question.kind === "order" ? orderInWords(question, given, inWords) : "";
  if (typeof given === "number") return typedInWords(question, given);
  const answers = "answers" in question ? question.answers : [];
  const said = answers.find(({ id }) => id === given);
  // A lesson that was changed since may no longer have this answer.
  return said ? inWords(said.say) : String(given);
}

function typedInWords(question: Question, given: number): string {
  if (question.kind === "goal") {
    const parameter = findParameter(question.control);
    return parameter?.kind === "number"
      ? `${t(`parameter.${question.control}`)}: ${formatQuantity(given, parameter.unit, digitsOfStep(parameter.step))}`
      : String(given);
  }
  if (!("format" in question)) return String(given);
  return formatQuantity(given, question.format.unit, Math.max(question.format.digits, 2));
}

const orderInWords = (question: OrderQuestion, ids: readonly string[], inWords: InWords): string =>
  ids
    .map((id, place) => {
      const item = question.items.find((each) => each.id === id);
      return `${place + 1}. ${item ? inWords(item.say) : id}`;
    })
    .join("; ");

function rightInWords(
  lesson: Lesson,
  index: number,
  { right, truth, typed }: Attempt,
  answered: Answered,
  inWords: InWords,
): string | null {
  const question = present(entryAt(lesson.steps, index).question);
  if (typed && "format" in question)
    return t("study.record.within", {
      truth: typedInWords(question, typed.truth),
      within: typedInWords(question, typed.within),
    });
  if (right !== false) return null;
  const situation = () => situationOf(statesOfQuestion(lesson, index), answered);
  if (question.kind === "order") {
    const ids = Array.isArray(truth) ? truth : rightOrder(question, situation());
    return ids && orderInWords(question, ids, inWords);
  }
  if (!("answers" in question)) return null;
  const id = truth ?? rightAnswer(question.answers, situation())?.id;
  const answer = question.answers.find((each) => each.id === id);
  return answer ? inWords(answer.say) : null;
}

function mistakeInWords(question: Question, { typed }: Attempt): string | null {
  if (!typed?.mistake || question.kind !== "number") return null;
  const mistake = question.mistakes.find(({ id }) => id === typed.mistake);
  return mistake ? wordsOf(mistake.say, () => "…") : null;
}

/** Was something not kept that the model must say now? */
export function needsModel(question: Question, { numbers, right, truth, typed }: Attempt): boolean {
  const choices = "answers" in question ? question.answers : "items" in question ? question.items : [];
  const shown = [question.ask, ...choices.map(({ say }) => say)].flatMap((words) => [...inlinesOf(words)]);
  const unkept = shown.some(
    (inline) => inline.kind === "figure" && numbers?.[inline.figure.written] === undefined,
  );
  return unkept || (right === false && truth === undefined && typed === undefined);
}
