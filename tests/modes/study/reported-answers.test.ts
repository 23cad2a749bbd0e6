import { readFileSync } from "node:fs";
import { expect, test } from "vitest";
import {
  type Attempt,
  NO_PROGRESS,
  type Progress,
  withLesson,
} from "../../../src/lesson/progress/progress.ts";
import { readLesson } from "../../../src/lesson/read/read.ts";
import { reportedAnswers } from "../../../src/modes/study/reported-answers.ts";

const file = "lessons/en/04-energy-loss.md";
const lesson = readLesson(readFileSync(file, "utf8"), file).value!;
const order = lesson.steps.find(({ question }) => question?.kind === "order")!;
const once = { tries: 1, day: "2026-11-29" };
const answered = (answers: Record<string, Attempt>): Progress =>
  withLesson(NO_PROGRESS, lesson.id, { step: "", seen: [], finished: false, answers, recalled: {} });

test("a choice is reported with its question, its options and what is right, once it is judged", () => {
  const predicted = answered({ "narrow-ask": { given: "same", right: null, ...once } });
  expect(reportedAnswers(predicted, NO_PROGRESS, [lesson])).toEqual([]);
  const judged = answered({ "narrow-ask": { given: "same", right: false, truth: "rises", ...once } });
  const [report] = reportedAnswers(judged, predicted, [lesson]);
  expect(report).toMatchObject({
    kind: "choice",
    language: "en",
    given: "same",
    correct: "rises",
    right: false,
  });
  expect(report!.asked).toMatch(/^We pinch the tube/);
  expect(report!.options.map(({ id }) => id).sort()).toEqual(["falls", "rises", "same"]);
  expect(report!.options.map(({ say }) => say)).toContain("It goes up");
  // An earlier visit has reported it.
  expect(reportedAnswers(judged, judged, [lesson])).toEqual([]);
});

test("an order lists its items; what was given is right where it was right", () => {
  const items = order.question?.kind === "order" ? order.question.items.map(({ id }) => id) : [];
  const right = answered({ [order.id]: { given: items, right: true, ...once } });
  expect(reportedAnswers(right, NO_PROGRESS, [lesson])[0]).toMatchObject({
    kind: "sequencing",
    given: items,
    correct: items,
  });
});

test("a typed number has the range that counted; a control's value has none", () => {
  const typed = { truth: 2, within: 0.25 };
  const file = "lessons/en/15-numbers.md";
  const numbers = readLesson(readFileSync(file, "utf8"), file).value!;
  const { id } = numbers.steps.find(({ question }) => question?.kind === "number")!;
  const progress = withLesson(NO_PROGRESS, numbers.id, {
    ...answered({}).lessons[lesson.id]!,
    answers: { [id]: { given: 2.1, right: true, typed, ...once } },
  });
  expect(reportedAnswers(progress, NO_PROGRESS, [numbers])[0]).toMatchObject({
    kind: "numeric",
    correct: { low: 1.75, high: 2.25 },
  });
  const goal = lesson.steps.find(({ question }) => question?.kind === "goal")!;
  const set = answered({ [goal.id]: { given: 12, right: true, ...once } });
  expect(reportedAnswers(set, NO_PROGRESS, [lesson])[0]).toMatchObject({
    kind: "numeric",
    given: 12,
    correct: null,
  });
});
