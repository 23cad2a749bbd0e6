/** The places of a question's answers: the same for a reader and a step each time, and no place gives the right answer away. */

import { entryAt, present } from "../../sim/checked/present.ts";
import { seededRandom } from "../../sim/random.ts";
import type { Answer, ChoiceQuestion, Lesson, Step } from "../lesson.ts";
import { fingerprint } from "../read/lesson-version.ts";

/**
 * The lesson with every question's answers as this reader sees them. A scale keeps its order. Elsewhere the answer
 * written first, by habit the right one, gets each place once before any place again; the others fall by chance.
 * @param reader any whole number; two readers may see different places, one reader always sees the same
 */
export function dealAnswers(lesson: Lesson, reader: number): Lesson {
  const turns = new Map<number, number>();
  const deal = (step: Step): Step => {
    const { question } = step;
    if (!question || !("answers" in question)) return step;
    if (question.scale) return withAnswers(step, question, alongScale(question.answers, question.scale));
    const [first, ...others] = question.answers;
    const many = question.answers.length;
    const turn = turns.get(many) ?? 0;
    turns.set(many, turn + 1);
    const round = `${reader} ${lesson.id} ${many} ${Math.floor(turn / many)}`;
    const place = entryAt(shuffled([...question.answers.keys()], round), turn % many);
    const rest = shuffled(others, `${reader} ${lesson.id}#${step.id}`);
    return withAnswers(step, question, [...rest.slice(0, place), present(first), ...rest.slice(place)]);
  };
  return { ...lesson, steps: lesson.steps.map(deal) };
}

const withAnswers = (step: Step, question: ChoiceQuestion, answers: readonly Answer[]): Step => ({
  ...step,
  question: { ...question, answers },
});

const alongScale = (answers: readonly Answer[], scale: readonly string[]): readonly Answer[] =>
  [...answers].sort((a, b) => scale.indexOf(a.id) - scale.indexOf(b.id));

/** Fisher and Yates; equal seeds give equal orders. */
export function shuffled<Item>(items: readonly Item[], seed: string): readonly Item[] {
  const random = seededRandom(Number.parseInt(fingerprint(seed), 16));
  const list = [...items];
  for (let last = list.length - 1; last > 0; last--) {
    const other = Math.floor(random() * (last + 1));
    [list[last], list[other]] = [entryAt(list, other), entryAt(list, last)];
  }
  return list;
}
