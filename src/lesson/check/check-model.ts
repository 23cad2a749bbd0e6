/** Every step run through the model: does it solve, are its numbers there, do its claims hold, has each question its answer? */
import { entryAt } from "../../sim/checked/present.ts";
import type { Circulation } from "../../sim/circulation/answer/answer.ts";
import type { Fault } from "../../sim/faults.ts";
import { findParameter } from "../../sim/parameters/parameters.ts";
import type { CirculationRequest } from "../../sim/parameters/request.ts";
import { nearestAllowed, setParameter } from "../../state/edit.ts";
import type { SceneState } from "../../state/scene-state.ts";
import { goalMet, rightAnswer, rightOrder } from "../judge/questions.ts";
import type { GoalQuestion, Lesson, Question, Step } from "../lesson.ts";
import { type Claim, judgeClaim } from "../model/claims.ts";
import { evaluate, holds, namesIn } from "../model/expression.ts";
import { lookupIn, type Situation } from "../model/figure-paths.ts";
import { figureValue } from "../model/live-figures.ts";
import { namesRead, requestsOf, situationOf, statesOfQuestion } from "../model/situation.ts";
import { statesAround } from "../model/states.ts";
import { inlinesOf } from "../prose.ts";
import type { Refuse } from "../read/read-prose.ts";
import { wordsIn, wordsOfTask } from "../read/references.ts";
import { checkNumber } from "./check-number.ts";

export type Solve = (request: CirculationRequest) => Circulation;

/** Answers of equal requests are kept: neighbouring steps ask for the same. `most`: answers kept before all are forgotten. */
export function rememberAnswers(solve: Solve, most = Number.POSITIVE_INFINITY): Solve {
  const answers = new Map<string, Circulation>();
  return (request) => {
    const key = JSON.stringify(request);
    const answer = answers.get(key) ?? solve(request);
    if (answers.size >= most) answers.clear();
    answers.set(key, answer);
    return answer;
  };
}

export function checkAgainstModel(lesson: Lesson, solve: Solve, refuse: Refuse): void {
  for (const index of lesson.steps.keys()) checkStep(lesson, index, solve, refuse);
}

/** One step of `lesson`, the one at `index`, against the model. */
export function checkStep(lesson: Lesson, index: number, solve: Solve, refuse: Refuse): void {
  const step = entryAt(lesson.steps, index);
  const states = statesAround(lesson, index);
  const names = namesRead(step);
  const panes = Object.entries(states.others).filter(([name]) => name === "second" || name === "third");
  const requests = [...requestsOf(names, states), ...panes.map(([, state]) => state.request)];
  for (const request of requests) checkRun(solve(request), step, refuse);
  // Only what the step reads was solved; asking for more would cost time for nothing.
  const wanted = new Set(requests.map((request) => JSON.stringify(request)));
  const answered = (request: CirculationRequest) =>
    wanted.has(JSON.stringify(request)) ? solve(request) : null;
  checkProse(step, situationOf(states, answered), refuse);
  if (step.question) checkQuestion(lesson, index, step.question, solve, refuse);
}

function checkRun({ run }: Circulation, step: Step, refuse: Refuse): void {
  if (!run.converged) {
    refuse(
      step.patchLine,
      `no steady answer in step "${step.id}"${run.reason ? ` (${run.reason})` : ""}`,
      "a state that the model can solve",
    );
  }
}

const measured = (names: readonly string[]): boolean => names.some((name) => /(^|\.)field\./.test(name));

function checkProse(step: Step, situation: Situation, refuse: Refuse): void {
  const contents = [step.plain, step.technical, step.notes, step.caution].flatMap((part) =>
    part ? [part.prose] : [],
  );
  const asked = step.question ? wordsIn(step.question) : [];
  for (const content of [...contents, ...asked, ...wordsOfTask(step.task)]) {
    for (const node of inlinesOf(content)) {
      if (
        node.kind === "figure" &&
        !measured(namesIn(node.figure.of)) &&
        figureValue(node.figure, situation) === null
      ) {
        refuse(
          node.line,
          `no value for {{ ${node.figure.written} }}`,
          "outputs that the model has in this step",
        );
      }
      if (node.kind !== "claim") continue;
      for (const claim of node.claims) {
        const { holds: kept, now, before } = judgeClaim(claim, situation);
        const values = before === null ? "" : ` (${before.toPrecision(4)}, then ${now?.toPrecision(4)})`;
        if (kept === null)
          refuse(node.line, `no value for claim "${claim.written}"`, "outputs that the model has");
        else if (!kept)
          refuse(
            node.line,
            `"${claim.written}" does not hold${values}`,
            "what the model does",
            otherWay(claim, situation),
          );
      }
    }
  }
}

/** A rise that is a fall, or the other way round: the words beside it need the same change, which only its author can make. */
function otherWay(claim: Claim, situation: Situation): Fault["fix"] {
  if (claim.kind !== "rises" && claim.kind !== "falls") return undefined;
  const kind = claim.kind === "rises" ? "falls" : "rises";
  const turned = judgeClaim({ ...claim, kind }, situation).holds === true;
  return turned ? [claim.written, claim.written.replace(` ${claim.kind} `, ` ${kind} `)] : undefined;
}

function checkQuestion(
  lesson: Lesson,
  index: number,
  question: Question,
  solve: Solve,
  refuse: Refuse,
): void {
  const states = statesOfQuestion(lesson, index);
  const situation = situationOf(states, solve);
  const fault = (found: string, allowed: string) => refuse(question.line, found, allowed);
  switch (question.kind) {
    case "predict":
    case "choose": {
      const lookup = lookupIn(situation);
      const right = question.answers.filter((answer) =>
        typeof answer.right === "boolean" ? answer.right : holds(answer.right, lookup),
      );
      if (rightAnswer(question.answers, situation) === null || right.length !== 1) {
        fault(
          `right by the model: ${right.map(({ id }) => id).join(", ") || "none"}`,
          "exactly one right answer",
        );
      }
      return;
    }
    case "estimate":
      if (evaluate(question.of, lookupIn(situation)) === null)
        fault("no value to estimate", "an output of this step");
      return;
    case "number":
      checkNumber(question, situation, refuse);
      return;
    case "order":
      if (rightOrder(question, situation) === null) fault("an item without a value", "outputs of this step");
      return;
    case "goal":
      checkGoal(
        question,
        states.own,
        (state) => goalMet(question, situationOf(statesAround(lesson, index, state), solve)) === true,
        fault,
      );
  }
}

/** `metAt`: whether this scene reaches the goal */
function checkGoal(
  question: GoalQuestion,
  own: SceneState,
  metAt: (state: SceneState) => boolean,
  fault: (found: string, allowed: string) => void,
): void {
  if (metAt(own))
    fault(
      "a goal that holds before anything is done",
      "a condition that is not met yet where the step begins",
    );
  const parameter = findParameter(question.control);
  if (parameter?.kind !== "number") return;
  const values = Array.from({ length: 9 }, (_, each) =>
    nearestAllowed(parameter, parameter.min + ((parameter.max - parameter.min) * each) / 8),
  );
  const met = values.filter((value) => metAt(setParameter(question.control, value)(own)));
  if (met.length === 0)
    fault(
      `no ${question.control} reaches it`,
      `a condition that a value from ${parameter.min} to ${parameter.max} ${parameter.unit} meets`,
    );
  const best = question.best === "smallest" ? values[0] : question.best === "largest" ? values[8] : undefined;
  if (best !== undefined && met.includes(best))
    fault(`met at ${best} ${parameter.unit} already`, "a best value within the range");
}
