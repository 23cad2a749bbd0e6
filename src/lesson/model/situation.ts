/** From a step to the numbers that its text and question need: which states to solve, and their answers put together. */

import { entryAt } from "../../sim/checked/present.ts";
import type { Circulation } from "../../sim/circulation/answer/answer.ts";
import type { FieldReadings } from "../../sim/flow-field/flow-field.ts";
import type { CirculationRequest } from "../../sim/parameters/request.ts";
import type { SceneState } from "../../state/scene-state.ts";
import { findStep, type Lesson, type Question, type Step, type StepStates } from "../lesson.ts";
import { type Inline, inlinesOf, type Prose } from "../prose.ts";
import { wordsIn, wordsOfTask } from "../read/references.ts";
import { claimNames } from "./claims.ts";
import { namesIn } from "./expression.ts";
import { figureBand } from "./figure-band.ts";
import type { Outcome, Situation } from "./figure-paths.ts";
import { figureValue, type Kept } from "./live-figures.ts";
import { statesAround, stepState } from "./states.ts";

/** A request's answer if it is there already. */
export type Answered = (request: CirculationRequest) => Circulation | null;

/** Output names that a step reads anywhere. */
export function namesRead(step: Step): readonly string[] {
  const contents: (Prose | readonly Inline[])[] = [];
  for (const part of [step.plain, step.technical, step.notes, step.caution])
    if (part) contents.push(part.prose);
  if (step.question) contents.push(...wordsIn(step.question));
  contents.push(...wordsOfTask(step.task));
  const names = contents.flatMap((content) =>
    [...inlinesOf(content)].flatMap((node) => {
      if (node.kind === "figure") return [...namesIn(node.figure.of)];
      return node.kind === "claim" ? node.claims.flatMap(claimNames) : [];
    }),
  );
  return [...names, ...(step.question ? questionNames(step.question) : [])];
}

function questionNames(question: Question): readonly string[] {
  switch (question.kind) {
    case "predict":
    case "choose":
      return question.answers.flatMap(({ right }) => (typeof right === "boolean" ? [] : namesIn(right)));
    case "goal":
      return namesIn(question.until);
    case "estimate":
      return namesIn(question.of);
    case "number":
      return [question, ...question.mistakes].flatMap(({ value }) => namesIn(value));
    case "order":
      return question.items.flatMap(({ value }) => (value ? namesIn(value) : []));
  }
}

/** Of the states around a step, those that these names reach. */
export function statesRead(
  names: readonly string[],
  states: StepStates,
): Readonly<Record<string, SceneState>> {
  const first = new Set(names.map((name) => entryAt(name.split("."), 0)));
  return Object.fromEntries(Object.entries(states.others).filter(([name]) => first.has(name)));
}

/** Requests that must be answered before every number of the step is known. */
export const requestsOf = (names: readonly string[], states: StepStates): readonly CirculationRequest[] => [
  states.own.request,
  ...Object.values(statesRead(names, states)).map(({ request }) => request),
];

/** `fields`: what is measured in the panes, the first one's first. */
export function situationOf(
  states: StepStates,
  answered: Answered,
  fields: readonly (FieldReadings | null)[] = [],
): Situation {
  const outcome = (state: SceneState, pane: number): Outcome => ({
    request: state.request,
    circulation: answered(state.request),
    field: fields[pane] ?? null,
  });
  const others: Record<string, Outcome> = {};
  for (const [name, state] of Object.entries(states.others)) {
    others[name] = outcome(state, name === "second" ? 1 : name === "third" ? 2 : Number.POSITIVE_INFINITY);
  }
  return { own: outcome(states.own, 0), others };
}

/** Where a question is judged: a prediction in the step that reveals it, with its own step as "previous"; all others in their own step. */
export function statesOfQuestion(lesson: Lesson, index: number, own?: SceneState): StepStates {
  const question = lesson.steps[index]?.question;
  if (question?.kind !== "predict") return statesAround(lesson, index, own);
  const states = statesAround(lesson, findStep(lesson, question.reveal));
  return { own: states.own, others: { ...states.others, previous: stepState(lesson, index) } };
}

/** By what the lesson writes for them; those still under way are left out. */
export const numbersIn = (
  content: Prose | readonly Inline[],
  situation: Situation,
): Readonly<Record<string, Kept>> =>
  Object.fromEntries(
    [...inlinesOf(content)].flatMap((node) => {
      if (node.kind !== "figure") return [];
      const value = figureValue(node.figure, situation);
      const band = figureBand(node.figure, situation);
      return value === null
        ? []
        : [[node.figure.written, band ? ([value, ...band] as const) : value] as const];
    }),
  );
