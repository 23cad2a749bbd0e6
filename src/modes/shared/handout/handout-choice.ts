/** Which steps of a lesson its page for families has, and which of them with a picture. */
import { type Signal, signal } from "@preact/signals";
import { findStep, type Lesson } from "../../../lesson/lesson.ts";
import { stepState } from "../../../lesson/model/states.ts";
import type { SceneName } from "../../../state/scene-state.ts";

/** Steps with pictures that one page holds; one whose picture takes a whole row counts as two. */
export const ONE_PAGE = 4;

/** Scenes with curves and many words beside their bodies: in half a row nobody could read them. */
const WIDE: readonly SceneName[] = ["growth", "exchange", "exercise"];

/** Whether a step's picture takes a whole row. */
export const isWide = (lesson: Lesson, index: number): boolean =>
  WIDE.includes(stepState(lesson, index).scene);

export interface HandoutChoice {
  /** ids */
  readonly steps: ReadonlySet<string>;
  /** ids of those that have a picture where they are in */
  readonly pictures: ReadonlySet<string>;
}

const idsOf = (lesson: Lesson): readonly string[] => lesson.steps.map(({ id }) => id);

/** What fits one page: the first step, and those that answer a prediction; where a lesson asks few, others in their order. */
export function firstChoice(lesson: Lesson): HandoutChoice {
  const reveals = lesson.steps.flatMap(({ question }) =>
    question?.kind === "predict" ? [findStep(lesson, question.reveal)] : [],
  );
  const explaining = lesson.steps.flatMap(({ question }, index) => (question ? [] : [index]));
  let room = ONE_PAGE;
  const first = [...new Set([0, ...reveals, ...explaining, ...lesson.steps.keys()])].filter((index) => {
    const takes = isWide(lesson, index) ? 2 : 1;
    const fits = takes <= room;
    if (fits) room -= takes;
    return fits;
  });
  const ids = idsOf(lesson);
  return {
    steps: new Set(ids.filter((_, index) => first.includes(index))),
    pictures: new Set(ids),
  };
}

export const withAllSteps = (choice: HandoutChoice, lesson: Lesson): HandoutChoice => ({
  ...choice,
  steps: new Set(idsOf(lesson)),
});

/** The same choice, but for one step or picture. */
export function withOne(
  choice: HandoutChoice,
  part: keyof HandoutChoice,
  id: string,
  on: boolean,
): HandoutChoice {
  const others = [...choice[part]].filter((each) => each !== id);
  return { ...choice, [part]: new Set(on ? [...others, id] : others) };
}

interface ChosenStep {
  /** Place in the lesson. */
  readonly index: number;
  readonly pictured: boolean;
}

/** In the lesson's order. */
export const chosenSteps = (lesson: Lesson, { steps, pictures }: HandoutChoice): readonly ChosenStep[] =>
  lesson.steps.flatMap(({ id }, index) => (steps.has(id) ? [{ index, pictured: pictures.has(id) }] : []));

const kept = new Map<string, Signal<HandoutChoice>>();

/** Lasts as long as this page of the browser; the same for a lesson in every language, and a new one where its steps change. */
export function choiceOf(lesson: Lesson): Signal<HandoutChoice> {
  const key = JSON.stringify([lesson.id, ...idsOf(lesson)]);
  const known = kept.get(key) ?? signal(firstChoice(lesson));
  kept.set(key, known);
  return known;
}
