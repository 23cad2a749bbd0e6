/** Judging: what a learner gave, against what the model does. Every outcome comes with its reason. */

import { present } from "../../sim/checked/present.ts";
import { findParameter, numberSetting } from "../../sim/parameters/parameters.ts";
import { nearestAllowed, setParameter } from "../../state/edit.ts";
import type { SceneState } from "../../state/scene-state.ts";
import type { Answer, EstimateQuestion, GoalQuestion, OrderQuestion, Question } from "../lesson.ts";
import { evaluate, holds } from "../model/expression.ts";
import { lookupIn, type Situation } from "../model/figure-paths.ts";
import { judgeNumber } from "./judge-number.ts";
import type { Given, Judgement } from "./judgement.ts";
import { halfWidth } from "./tolerance.ts";

export type { Given, Judgement } from "./judgement.ts";

/** null while the model's answer is not there, or when `given` is no answer to this question. */
export function judge(
  question: Question,
  given: Given,
  situation: Situation,
  nearer: Situation | null = null,
): Judgement | null {
  switch (question.kind) {
    case "predict":
    case "choose":
      return judgeAnswer(question.answers, given, situation);
    case "goal":
      return judgeGoal(question, situation, nearer);
    case "estimate":
      return typeof given === "number" ? judgeEstimate(question, given, situation) : null;
    case "number":
      return judgeNumber(question, given, situation);
    case "order":
      return Array.isArray(given) ? judgeOrder(question, given, situation) : null;
  }
}

/** The answer that the model gives; null while unknown. */
export function rightAnswer(answers: readonly Answer[], situation: Situation): Answer | null {
  const lookup = lookupIn(situation);
  const verdicts = answers.map(({ right }) => (typeof right === "boolean" ? right : holds(right, lookup)));
  return verdicts.includes(null) ? null : (answers[verdicts.indexOf(true)] ?? null);
}

function judgeAnswer(answers: readonly Answer[], given: Given, situation: Situation): Judgement | null {
  const chosen = answers.find(({ id }) => id === given);
  const truth = rightAnswer(answers, situation);
  if (!chosen || !truth) return null;
  const right = chosen === truth;
  return { right, because: chosen.because, show: right ? null : chosen.show, truth: truth.id };
}

function judgeEstimate(question: EstimateQuestion, given: number, situation: Situation): Judgement | null {
  const truth = evaluate(question.of, lookupIn(situation));
  if (truth === null) return null;
  const within = halfWidth(question.within, truth);
  const right = Math.abs(given - truth) <= within;
  const because = right ? question.close : given < truth ? question.low : question.high;
  return { right, because, show: null, truth, within };
}

/** First to last, by the list or by the model. */
export function rightOrder(question: OrderQuestion, situation: Situation): readonly string[] | null {
  if (question.order) return question.order;
  const lookup = lookupIn(situation);
  const values = question.items.map(({ id, value }) => ({ id, value: value && evaluate(value, lookup) }));
  if (values.some(({ value }) => value === null)) return null;
  const sign = question.lowest ? 1 : -1;
  return values.sort((a, b) => sign * (present(a.value) - present(b.value))).map(({ id }) => id);
}

function judgeOrder(
  question: OrderQuestion,
  given: readonly string[],
  situation: Situation,
): Judgement | null {
  const truth = rightOrder(question, situation);
  if (!truth || given.length !== truth.length) return null;
  const right = truth.every((id, index) => given[index] === id);
  return { right, because: right ? question.right : question.wrong, show: null, truth };
}

/** Is the goal's condition met in this situation? */
export const goalMet = (question: GoalQuestion, situation: Situation): boolean | null =>
  holds(question.until, lookupIn(situation));

/** The scene that must fail if the control is at its best value: one tolerance further towards the wanted end. null when it is already there. */
export function nearerGoal(question: GoalQuestion, state: SceneState): SceneState | null {
  const parameter = findParameter(question.control);
  if (!question.best || parameter?.kind !== "number") return null;
  const value = numberSetting(state.request, question.control);
  const move = Math.max(question.within, parameter.step);
  const wished = nearestAllowed(parameter, question.best === "smallest" ? value - move : value + move);
  return wished === value ? null : setParameter(question.control, wished)(state);
}

function judgeGoal(question: GoalQuestion, situation: Situation, nearer: Situation | null): Judgement | null {
  const met = goalMet(question, situation);
  if (met === null) return null;
  if (!met) return { right: false, because: question.missed, show: null, truth: null };
  const alsoNearer = nearer && goalMet(question, nearer);
  if (nearer && alsoNearer === null) return null;
  return {
    right: !alsoNearer,
    because: alsoNearer ? question.further : question.reached,
    show: null,
    truth: null,
  };
}
