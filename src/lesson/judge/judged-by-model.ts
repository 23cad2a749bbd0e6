/** Whether the model says what is right, or whoever wrote the lesson. */
import type { Question } from "../lesson.ts";

export function isJudgedByModel(question: Question): boolean {
  if ("answers" in question) return question.answers.some(({ right }) => typeof right !== "boolean");
  return question.kind !== "order" || question.order === null;
}
