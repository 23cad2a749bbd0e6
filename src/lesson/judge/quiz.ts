/** The course quiz: questions drawn from all lessons, the same for a reader and a round, each lesson with its part. */

import type { Lesson } from "../lesson.ts";
import type { Progress, QuizProgress } from "../progress/progress.ts";
import { shuffled } from "./deal.ts";

export const QUIZ_LENGTH = 30;
/** Results kept, the latest. */
const MAX_RESULTS = 20;

const NO_QUIZ: QuizProgress = { round: 1, given: {}, results: [] };
export const quizOf = (progress: Progress): QuizProgress => progress.quiz ?? NO_QUIZ;

/** `lesson#step` of questions that need no control to be set: one from each lesson in turn, until there are enough. */
export function drawQuiz(lessons: readonly Lesson[], reader: number, round: number): readonly string[] {
  const seed = `${reader} ${round}`;
  const piles = shuffled(lessons, seed).map(({ id, steps }) => {
    const keys = steps.flatMap(({ id: step, question }) =>
      question && question.kind !== "goal" ? [`${id}#${step}`] : [],
    );
    return shuffled(keys, `${seed} ${id}`);
  });
  const drawn: string[] = [];
  const longest = Math.max(0, ...piles.map(({ length }) => length));
  for (let turn = 0; turn < longest; turn++)
    drawn.push(...piles.flatMap((pile) => pile.slice(turn, turn + 1)));
  return shuffled(drawn.slice(0, QUIZ_LENGTH), `${seed} order`);
}

/** The record with one answer more; the last one of `keys` finishes the round. `day`: ISO 8601 */
export function quizAnswered(
  progress: Progress,
  keys: readonly string[],
  { key, right, day }: { readonly key: string; readonly right: boolean; readonly day: string },
): Progress {
  const quiz = quizOf(progress);
  if (key in quiz.given || !keys.includes(key)) return progress;
  const given = { ...quiz.given, [key]: right };
  const done = keys.every((each) => each in given);
  const result = { day, right: keys.filter((each) => given[each]).length, asked: keys.length };
  return {
    ...progress,
    quiz: { ...quiz, given, results: done ? [...quiz.results, result].slice(-MAX_RESULTS) : quiz.results },
  };
}

/** Other questions. */
export const nextRound = (progress: Progress): Progress => {
  const quiz = quizOf(progress);
  return { ...progress, quiz: { ...quiz, round: quiz.round + 1, given: {} } };
};
