/** What a lesson's parts say of each other: steps, states and output names that must exist; parts that must be where they are. */

import { present } from "../../sim/checked/present.ts";
import { nearestMatch } from "../../sim/faults.ts";
import type { ReadRecord } from "../format/yaml-record.ts";
import type { Lesson, Question, Step, Words, WrittenTask } from "../lesson.ts";
import { type Claim, claimNames } from "../model/claims.ts";
import { type Expression, namesIn } from "../model/expression.ts";
import { BUILT_IN_STATES, nameFault } from "../model/figure-paths.ts";
import { inlinesOf, type Prose } from "../prose.ts";
import type { Refuse } from "./read-prose.ts";

export function checkReferences(lesson: Lesson, front: ReadRecord<unknown>, refuse: Refuse): void {
  const states = Object.keys(lesson.states);
  for (const name of states) {
    if ((BUILT_IN_STATES as readonly string[]).includes(name)) {
      refuse(
        front.lineOf("states", name),
        `state "${name}"`,
        `a name other than ${BUILT_IN_STATES.join(", ")}`,
      );
    }
  }
  for (const { lesson: other, step } of lesson.recall) {
    if (other === null || other === lesson.id) checkRecall(lesson, step, front.lineOf("recall"), refuse);
  }
  for (const step of lesson.steps) checkStep(lesson, step, states, refuse);
}

/** A question to be asked again must exist and must not need the scene. */
function checkRecall(lesson: Lesson, id: string, line: number, refuse: Refuse): void {
  if (!stepExists(lesson, id, line, refuse)) return;
  const question = present(lesson.steps.find((step) => step.id === id)).question;
  if (!question) refuse(line, `step "${id}" has no question`, "a step with a question");
  else if (question.kind === "goal")
    refuse(line, `step "${id}" asks for a control`, "a question without the scene");
}

function stepExists(lesson: Lesson, id: string, line: number, refuse: Refuse): boolean {
  const ids = lesson.steps.map((step) => step.id);
  if (ids.includes(id)) return true;
  const near = nearestMatch(id, ids);
  refuse(
    line,
    `step "${id}"`,
    near ? `an id of a step; nearest: ${near}` : `an id of a step: ${ids.join(", ")}`,
  );
  return false;
}

function checkStep(lesson: Lesson, step: Step, states: readonly string[], refuse: Refuse): void {
  const { from } = step.patch;
  if (from !== undefined && !["previous", "start", ...states].includes(from)) {
    refuse(step.patchLine, `from: ${from}`, ["previous", "start", ...states].join(", "));
  }
  for (const part of [step.plain, step.technical, step.notes, step.caution]) {
    if (part) checkContent(lesson, part.prose, states, refuse);
  }
  for (const words of wordsOfTask(step.task)) checkContent(lesson, words, states, refuse);
  for (const part of [step.plain, step.caution]) if (part) refuseEquations(part.prose, refuse);
  if (step.question) checkQuestion(lesson, step, step.question, states, refuse);
}

function refuseEquations(prose: Prose, refuse: Refuse): void {
  for (const block of prose)
    if (block.kind === "math") refuse(block.line, "an equation", "no equations in this part");
  for (const node of inlinesOf(prose)) {
    if (node.kind === "math") refuse(node.line, "an equation", "no equations in this part");
  }
}

export function checkContent(
  lesson: Lesson,
  content: Prose | Words,
  states: readonly string[],
  refuse: Refuse,
): void {
  for (const node of inlinesOf(content)) {
    if (node.kind === "figure") checkNames(namesIn(node.figure.of), node.line, states, refuse, true);
    if (node.kind === "claim") for (const claim of node.claims) checkClaim(claim, node.line, states, refuse);
    if (node.kind === "link" && (node.to.lesson === null || node.to.lesson === lesson.id)) {
      stepExists(lesson, node.to.step, node.line, refuse);
    }
  }
}

function checkClaim(claim: Claim, line: number, states: readonly string[], refuse: Refuse): void {
  if (claim.kind !== "condition" && ![...BUILT_IN_STATES, ...states].includes(claim.from)) {
    refuse(line, `from ${claim.from}`, [...BUILT_IN_STATES, ...states].join(", "));
  } else checkNames(claimNames(claim), line, states, refuse, false);
}

function checkNames(
  names: readonly string[],
  line: number,
  states: readonly string[],
  refuse: Refuse,
  mayBeMeasured: boolean,
): void {
  for (const name of new Set(names)) {
    const fault = nameFault(name, states);
    if (fault) refuse(line, fault.found, fault.allowed);
    else if (!mayBeMeasured && /(^|\.)field\./.test(name)) {
      refuse(
        line,
        name,
        "outputs of the circulation; what is measured in the moving flow is for numbers in the text",
      );
    }
  }
}

function checkQuestion(
  lesson: Lesson,
  step: Step,
  question: Question,
  states: readonly string[],
  refuse: Refuse,
): void {
  const names = (expression: Expression) =>
    checkNames(namesIn(expression), question.line, states, refuse, false);
  for (const words of wordsIn(question)) checkContent(lesson, words, states, refuse);
  if (question.kind === "predict" || question.kind === "choose") {
    for (const { right, show } of question.answers) {
      if (typeof right !== "boolean") names(right);
      if (show !== null) stepExists(lesson, show, question.line, refuse);
    }
    const typed = question.answers.every(({ right }) => typeof right === "boolean");
    const right = question.answers.filter((answer) => answer.right === true).map(({ id }) => id);
    if (typed && right.length !== 1) {
      refuse(
        question.line,
        right.length === 0 ? "no right answer" : `${right.length} right answers: ${right.join(", ")}`,
        "right: true below exactly one answer",
      );
    }
  }
  if (
    question.kind === "predict" &&
    question.reveal !== "" &&
    stepExists(lesson, question.reveal, question.line, refuse)
  ) {
    const later = lesson.steps.findIndex(({ id }) => id === question.reveal) > lesson.steps.indexOf(step);
    if (!later) refuse(question.line, `reveal: ${question.reveal}`, "a later step");
  }
  if (question.kind === "goal") names(question.until);
  if (question.kind === "estimate") names(question.of);
  if (question.kind === "number") for (const { value } of [question, ...question.mistakes]) names(value);
  if (question.kind === "order") for (const { value } of question.items) if (value) names(value);
}

export const wordsOfTask = (task: WrittenTask | null): readonly Words[] =>
  task ? [task.ask, ...task.answer] : [];

/** Every text of a question. */
export function wordsIn(question: Question): readonly Words[] {
  const asked = [question.ask, ...question.hints];
  switch (question.kind) {
    case "predict":
    case "choose":
      return [...asked, ...question.answers.flatMap(({ say, because }) => [say, because])];
    case "goal":
      return [...asked, question.reached, question.further, question.missed];
    case "estimate":
      return [...asked, question.close, question.low, question.high];
    case "number":
      return [
        ...asked,
        ...question.mistakes.flatMap(({ say, because }) => [say, because]),
        question.right,
        question.wrong,
        ...question.solution,
      ];
    case "order":
      return [...asked, ...question.items.map(({ say }) => say), question.right, question.wrong];
  }
}
