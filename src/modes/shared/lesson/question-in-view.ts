/** The question that a lesson under way asks now, the numbers in its words, and its judgement by the model. */
import { computed, effect, type ReadonlySignal } from "@preact/signals";
import { type Given, judge, nearerGoal } from "../../../lesson/judge/questions.ts";
import { findStep, type Lesson, type Question } from "../../../lesson/lesson.ts";
import type { Situation } from "../../../lesson/model/figure-paths.ts";
import { namesRead, requestsOf, situationOf, statesOfQuestion } from "../../../lesson/model/situation.ts";
import { statesAround } from "../../../lesson/model/states.ts";
import type { Player } from "../../../lesson/player.ts";
import { entryAt } from "../../../sim/checked/present.ts";
import type { SceneState } from "../../../state/scene-state.ts";
import type { KnownAnswers } from "./known-answers.ts";

export interface QuestionInView {
  readonly question: Question;
  readonly lesson: Lesson;
  readonly step: number;
  readonly key: string;
}

export interface Asking {
  readonly question: ReadonlySignal<QuestionInView | null>;
  /** Numbers for the words of a question asked again, from its own step; null for one that stands in the step shown. */
  readonly ownSituation: ReadonlySignal<Situation | null>;
  release(): void;
}

/** `others`: the lessons that questions asked again come from */
export function askQuestions(
  lesson: Lesson,
  others: readonly Lesson[],
  player: ReadonlySignal<Player>,
  known: KnownAnswers,
): Asking {
  const question = computed<QuestionInView | null>(() => {
    const { phase, queue } = player.value;
    const again = phase === "again" ? queue[0] : undefined;
    const from = again?.lesson ? others.find(({ id }) => id === again.lesson) : lesson;
    const index = again ? (from ? findStep(from, again.step) : -1) : player.value.step;
    const step = from?.steps[index];
    if (!from || !step?.question) return null;
    return { question: step.question, lesson: from, step: index, key: `${from.id}#${step.id}` };
  });
  const asked = computed(() => {
    const view = question.value;
    if (!view || player.value.phase !== "again") return null;
    return statesAround(view.lesson, view.step);
  });
  const release = effect(() => {
    const view = question.value;
    if (!view || !asked.value) return;
    for (const request of requestsOf(namesRead(entryAt(view.lesson.steps, view.step)), asked.value))
      known.want(request);
  });
  const ownSituation = computed(() => asked.value && situationOf(asked.value, known.answered));
  return { question, ownSituation, release };
}

/** `scene`: what the learner has made of the step's scene */
export async function judgeByModel(
  known: KnownAnswers,
  view: QuestionInView,
  given: Given,
  scene?: SceneState,
): Promise<ReturnType<typeof judge>> {
  const around = statesOfQuestion(view.lesson, view.step, scene);
  const needed = namesRead(entryAt(view.lesson.steps, view.step));
  const nearerScene = view.question.kind === "goal" && scene ? nearerGoal(view.question, scene) : null;
  const nearerStates = nearerScene && statesAround(view.lesson, view.step, nearerScene);
  await known.fetch([
    ...requestsOf(needed, around),
    ...(nearerStates ? requestsOf(needed, nearerStates) : []),
  ]);
  const nearer = nearerStates && situationOf(nearerStates, known.exactly);
  return judge(view.question, given, situationOf(around, known.exactly), nearer);
}
