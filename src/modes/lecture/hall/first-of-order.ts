/** An order as a hall answers it, by one hand or one tap each: what comes first? */

import { t } from "../../../i18n/index.ts";
import type { ChoiceQuestion, Lesson, OrderQuestion, Question, Step, Words } from "../../../lesson/lesson.ts";
import type { Expression } from "../../../lesson/model/expression.ts";

export const forHall = (lesson: Lesson): Lesson => ({
  ...lesson,
  steps: lesson.steps.map(
    (step): Step => (step.question ? { ...step, question: hallAsks(step.question) } : step),
  ),
});

/** The question with the words that ask for what comes first, in the language of the moment. */
export const hallAsks = (question: Question): Question =>
  question.kind === "order" ? firstOf(question) : question;

function firstOf(question: OrderQuestion): ChoiceQuestion {
  const { ask, hints, again, room, line, items } = question;
  return {
    kind: "choose",
    hints,
    again,
    room,
    line,
    scale: null,
    ask: withFirst(ask),
    answers: items.map(({ id, say }) => ({
      id,
      say,
      because: question.right,
      right: isFirst(question, id),
      show: null,
    })),
  };
}

const withFirst = (ask: Words): Words => [...ask, { kind: "text", text: ` ${t("lecture.hall.first")}` }];

/** Its value is beyond each other's. */
function isFirst({ items, order, lowest }: OrderQuestion, id: string): boolean | Expression {
  const own = items.find((item) => item.id === id)?.value;
  if (order || !own) return order?.[0] === id;
  return items
    .flatMap(({ id: other, value }) => (value && other !== id ? value : []))
    .map((value): Expression => ({ kind: "binary", operator: lowest ? "<" : ">", left: own, right: value }))
    .reduce((left, right): Expression => ({ kind: "binary", operator: "and", left, right }));
}
