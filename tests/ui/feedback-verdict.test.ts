import { readFileSync } from "node:fs";
import { expect, test } from "vitest";
import type { Question } from "../../src/lesson/lesson.ts";
import { readLesson } from "../../src/lesson/read/read.ts";
import { verdictOf } from "../../src/ui/lesson/question-view.tsx";

const judgement = { right: false, because: [], show: null, truth: "a" };
const questionIn = (block: string): Question => {
  const front = "id: mine\nnumber: 90\ntitle: T\nreader: r\naim: a\nremember: m\nminutes: 1";
  const text = `---\n${front}\n---\n\n## One {#one}\n\n\`\`\`question\n${block}\n\`\`\`\n\n### plain\nWords.\n`;
  return readLesson(text, "mine.md").value!.steps[0]!.question!;
};

test("where the author says what is right, the model is not named as the judge", () => {
  const typed = questionIn(
    "kind: choose\nask: Why?\nanswers:\n  a: { say: A, right: true, because: So. }\n  b: { say: B, because: Not so. }",
  );
  expect(verdictOf(typed, judgement)).toBe("Another answer is right.");
  expect(verdictOf(typed, { ...judgement, right: true })).toBe("That is right.");
  const listed =
    "kind: order\nask: Which?\nitems:\n  a: { say: A }\n  b: { say: B }\norder: [a, b]\nright: R\nwrong: W";
  expect(verdictOf(questionIn(listed), judgement)).toBe("Another answer is right.");
});

test("where the model does, it is", () => {
  const { value } = readLesson(readFileSync("lessons/en/04-energy-loss.md", "utf8"), "04-energy-loss.md");
  const predicted = value!.steps.find(({ question }) => question?.kind === "predict")!.question!;
  expect(verdictOf(predicted, judgement)).toBeUndefined();
});
