import { expect, test } from "vitest";
import { t } from "../../../../src/i18n/index.ts";
import { rightAnswer, rightOrder } from "../../../../src/lesson/judge/questions.ts";
import { loadLibrary } from "../../../../src/lesson/library/library.ts";
import { situationOf } from "../../../../src/lesson/model/situation.ts";
import { statesAround } from "../../../../src/lesson/model/states.ts";
import { wordsOf } from "../../../../src/lesson/prose.ts";
import { forHall } from "../../../../src/modes/lecture/hall/first-of-order.ts";
import { choicesOf } from "../../../../src/modes/lecture/hall/hall-question.ts";
import { solve } from "../../../../src/sim/circulation/solve.ts";

test("every order of the lessons is put to the hall as what comes first, and the model's first is the right one", async () => {
  const { lessons } = await loadLibrary("en");
  let orders = 0;
  for (const lesson of lessons) {
    for (const [index, { question: asked }] of forHall(lesson).steps.entries()) {
      const question = lesson.steps[index]?.question;
      if (question?.kind !== "order") {
        expect(asked).toEqual(question);
        continue;
      }
      orders++;
      expect(question.room).toBe(true);
      if (asked?.kind !== "choose") throw new Error("no choice");
      expect(wordsOf(asked.ask)).toBe(`${wordsOf(question.ask)} ${t("lecture.hall.first")}`);
      expect(choicesOf(asked, { number: () => "" } as never)).toHaveLength(question.items.length);
      const situation = situationOf(statesAround(lesson, index), solve);
      expect(rightAnswer(asked.answers, situation)?.id).toBe(rightOrder(question, situation)?.[0]);
    }
  }
  expect(orders).toBeGreaterThan(5);
});
