/** A typed number: right, a mistake with a name, or another number. */

import type { Mistake, NumberQuestion } from "../lesson.ts";
import { evaluate } from "../model/expression.ts";
import { lookupIn, type Situation } from "../model/figure-paths.ts";
import type { Given, Judgement } from "./judgement.ts";
import { widthOfNumber } from "./tolerance.ts";

/** Stands for the right number where one of a few is pointed at instead of typed. */
export const RIGHT_NUMBER = "=";

/** null while the model's answer is not there. */
export function judgeNumber(question: NumberQuestion, given: Given, situation: Situation): Judgement | null {
  const lookup = lookupIn(situation);
  const truth = evaluate(question.value, lookup);
  if (truth === null) return null;
  const within = widthOfNumber(question, truth);
  const answer = (right: boolean, mistake?: Mistake): Judgement => ({
    right,
    because: right ? question.right : (mistake?.because ?? question.wrong),
    show: null,
    truth,
    within,
    ...(mistake ? { mistake } : {}),
  });
  if (typeof given !== "number") {
    const pointedAt = question.mistakes.find(({ id }) => id === given);
    return given === RIGHT_NUMBER ? answer(true) : pointedAt ? answer(false, pointedAt) : null;
  }
  if (Math.abs(given - truth) <= within) return answer(true);
  const mistake = question.mistakes.find(({ value }) => {
    const slip = evaluate(value, lookup);
    return slip !== null && Math.abs(given - slip) <= widthOfNumber(question, slip);
  });
  return answer(false, mistake);
}
