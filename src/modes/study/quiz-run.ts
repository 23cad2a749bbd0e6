/** The course quiz under way: the question in view with its scene and numbers, its judgement, and what is kept. */
import { batch, computed, effect, type ReadonlySignal, signal } from "@preact/signals";
import { dealAnswers } from "../../lesson/judge/deal.ts";
import type { Given, Judgement } from "../../lesson/judge/questions.ts";
import { drawQuiz, nextRound, quizAnswered, quizOf } from "../../lesson/judge/quiz.ts";
import { type Lesson, type Question, type Step, stepOfKey } from "../../lesson/lesson.ts";
import type { Situation } from "../../lesson/model/figure-paths.ts";
import { namesRead, requestsOf, situationOf } from "../../lesson/model/situation.ts";
import { statesAround, stepState } from "../../lesson/model/states.ts";
import { knownAnswers } from "../shared/lesson/known-answers.ts";
import { judgeByModel } from "../shared/lesson/question-in-view.ts";
import type { StudyProps } from "./study-props.ts";

export interface QuizItem {
  readonly key: string;
  readonly lesson: Lesson;
  readonly step: Step;
  readonly question: Question;
  readonly situation: Situation;
}

export interface QuizRun {
  /** All of this round, `lesson#step`. */
  readonly keys: ReadonlySignal<readonly string[]>;
  /** null at the end. */
  readonly item: ReadonlySignal<QuizItem | null>;
  readonly given: ReadonlySignal<Given | null>;
  readonly judgement: ReadonlySignal<Judgement | null>;
  readonly hints: ReadonlySignal<number>;
  answer(given: Given): Promise<void>;
  hint(): void;
  next(): void;
  again(): void;
  release(): void;
}

export function startQuiz({ context: { session }, library, kept }: StudyProps): QuizRun {
  const { reader } = kept.progress.peek();
  const lessons = library.lessons.map((lesson) => dealAnswers(lesson, reader));
  const known = knownAnswers(session.chain);
  const round = computed(() => quizOf(kept.progress.value).round);
  const keys = computed(() => drawQuiz(library.lessons, reader, round.value));
  const open = () => keys.peek().find((key) => !(key in quizOf(kept.progress.peek()).given)) ?? null;
  const at = signal(open());
  const given = signal<Given | null>(null);
  const judgement = signal<Judgement | null>(null);
  const hints = signal(0);
  const place = computed(() => {
    const found = at.value === null ? null : stepOfKey(lessons, at.value);
    return found && { ...found, states: statesAround(found.lesson, found.index) };
  });
  const item = computed<QuizItem | null>(() => {
    if (!place.value || at.value === null) return null;
    const { lesson, step, states } = place.value;
    if (!step.question) return null;
    return {
      key: at.value,
      lesson,
      step,
      question: step.question,
      situation: situationOf(states, known.exactly),
    };
  });
  const show = effect(() => {
    if (!place.value) return;
    const { lesson, index, step, states } = place.value;
    for (const request of requestsOf(namesRead(step), states)) known.want(request);
    session.show(stepState(lesson, index));
  });
  const keep = (progress: Parameters<typeof kept.keep>[0]) =>
    kept.keep(progress, at.peek() ?? "", library.lessons);
  const toOpen = () =>
    batch(() => {
      at.value = open();
      given.value = null;
      judgement.value = null;
      hints.value = 0;
    });
  return {
    keys,
    item,
    given,
    judgement,
    hints,
    async answer(answer) {
      const now = item.peek();
      const view = place.peek();
      if (!now || !view || judgement.peek()) return;
      const { question, lesson, key } = now;
      const judged = await judgeByModel(known, { question, lesson, step: view.index, key }, answer);
      if (!judged || item.peek()?.key !== key || judgement.peek()) return;
      batch(() => {
        given.value = answer;
        judgement.value = judged;
      });
      const day = new Date().toISOString().slice(0, 10);
      keep(quizAnswered(kept.progress.peek(), keys.peek(), { key, right: judged.right, day }));
    },
    hint() {
      hints.value = Math.min(hints.peek() + 1, item.peek()?.question.hints.length ?? 0);
    },
    next: toOpen,
    again() {
      keep(nextRound(kept.progress.peek()));
      toOpen();
    },
    release: show,
  };
}
