/** A lesson under way on the page: the player's state, the scene that follows it, and the model's numbers for what is read and asked. */
import { batch, computed, effect, type ReadonlySignal, signal, untracked } from "@preact/signals";
import { dealAnswers } from "../../../lesson/judge/deal.ts";
import type { Given } from "../../../lesson/judge/questions.ts";
import { findStep, type Lesson } from "../../../lesson/lesson.ts";
import type { Situation } from "../../../lesson/model/figure-paths.ts";
import { namesRead, numbersIn, situationOf, statesRead } from "../../../lesson/model/situation.ts";
import { statesAround, stepState } from "../../../lesson/model/states.ts";
import {
  type Again,
  type Player,
  type PlayerEvent,
  play,
  predictionFor,
  startPlayer,
  stepAt,
} from "../../../lesson/player.ts";
import type { LessonProgress } from "../../../lesson/progress/progress.ts";
import { entryAt } from "../../../sim/checked/present.ts";
import type { SceneState } from "../../../state/scene-state.ts";
import type { Session } from "../session.ts";
import { knownAnswers } from "./known-answers.ts";
import { askQuestions, judgeByModel, type QuestionInView } from "./question-in-view.ts";

export interface LessonRun {
  readonly lesson: Lesson;
  readonly player: ReadonlySignal<Player>;
  /** Index of the step whose words and picture are shown (the detour's, while there is one). */
  readonly shown: ReadonlySignal<number>;
  /** Numbers for the words of the step shown; they follow the controls. */
  readonly situation: ReadonlySignal<Situation>;
  readonly question: ReadonlySignal<QuestionInView | null>;
  /** Numbers for the words of a question asked again, from its own step. */
  readonly questionSituation: ReadonlySignal<Situation>;
  send(event: PlayerEvent): void;
  /** Judged by the model, which may take a moment; a prediction is only locked. */
  answer(given: Given): Promise<void>;
  /** Back to the scene as the step sets it, after what-ifs. */
  restoreScene(): void;
  release(): void;
}

export interface RunOptions {
  /** A learner alone; false for a speaker, who may walk on. */
  readonly alone: boolean;
  /** Decides where a question's answers stand. */
  readonly reader: number;
  readonly earlier?: LessonProgress | undefined;
  /** id of the step to begin at */
  readonly at?: string | undefined;
  readonly due?: readonly Again[];
  /** The same lesson under way, whose place and scene are kept. */
  readonly before?: Player | undefined;
  /** For questions asked again from other lessons. */
  readonly lessons: readonly Lesson[];
  /** Called at the start and at each change. */
  readonly onProgress?: (player: Player) => void;
}

const today = (): string => new Date().toISOString().slice(0, 10);

export function runLesson(session: Session, written: Lesson, options: RunOptions): LessonRun {
  const { chain } = session;
  const lesson = dealAnswers(written, options.reader);
  const others = options.lessons.map((each) => dealAnswers(each, options.reader));
  const { before } = options;
  const begun = (): Player => startPlayer(lesson, options.alone, options.earlier, options.at, options.due);
  // A judgement's words are of the language that was left.
  const player = signal(before ? { ...before, judgement: null } : begun());
  const known = knownAnswers(chain);
  const shown = computed(() => {
    const { phase, why, step } = player.value;
    return phase === "why" && why !== null ? findStep(lesson, why) : step;
  });

  const showStep = (index: number): void => {
    known.leave();
    session.show(sceneOfStep(lesson, index, session.scene.peek()));
  };
  let standing = before !== undefined;
  const stopShowing = effect(() => {
    const index = shown.value;
    if (!standing) untracked(() => showStep(index));
    standing = false;
  });

  const names = computed(() => namesRead(entryAt(lesson.steps, shown.value)));
  const states = computed(() => statesAround(lesson, shown.value, session.scene.value));
  const stopAsking = effect(() => {
    for (const [name, { request }] of Object.entries(statesRead(names.value, states.value))) {
      if (name !== "second" && name !== "third") known.want(request);
    }
  });
  const situation = computed(() => situationOf(states.value, known.answered, chain.readings.value));

  const asking = askQuestions(lesson, others, player, known);
  const { question } = asking;
  const questionSituation = computed(() => asking.ownSituation.value ?? situation.value);

  const send = (event: PlayerEvent): void => {
    player.value = play(lesson, player.peek(), event);
  };

  // What was predicted is judged as soon as its run is entered; while another question is in view, it is recorded alone.
  const stopJudging = effect(() => {
    const prediction = predictionFor(lesson, stepAt(lesson, player.value));
    const attempt = prediction && player.value.answers[prediction.id];
    if (!prediction?.question || !attempt || asksOther(player.value, attempt.right)) return;
    const { id: key, question } = prediction;
    const view = { question, lesson, step: findStep(lesson, key), key };
    void judgeByModel(known, view, attempt.given).then((judgement) => {
      if (judgement) send({ kind: "judged", question: key, judgement });
    });
  });

  const stopTelling = effect(() => {
    const now = player.value;
    untracked(() => options.onProgress?.(now));
  });

  const judgeAgain = async (earlier: Player): Promise<void> => {
    const view = question.peek();
    if (!view || earlier.given === null || view.question.kind === "predict") return;
    const scene = earlier.phase === "again" ? undefined : session.scene.peek();
    const judgement = await judgeByModel(known, view, earlier.given, scene);
    const now = player.peek();
    if (now.step === earlier.step && now.phase === earlier.phase && !now.judgement)
      player.value = { ...now, judgement };
  };
  if (before?.judgement) void judgeAgain(before);

  const answer = async (given: Given): Promise<void> => {
    const view = question.peek();
    if (!view) return;
    const asked = player.peek();
    const seen = questionSituation.peek();
    const first = asked.phase !== "again" && view.question.kind === "predict";
    const scene = asked.phase === "again" ? undefined : session.scene.peek();
    const judgement = first ? null : await judgeByModel(known, view, given, scene);
    const now = player.peek();
    // The learner may have walked on while the model was at work.
    if (now.step !== asked.step || now.phase !== asked.phase) return;
    if (first || judgement)
      send({ kind: "answer", given, judgement, day: today(), numbers: numbersIn(view.question.ask, seen) });
  };

  return {
    lesson,
    player,
    shown,
    situation,
    question,
    questionSituation,
    send,
    answer,
    restoreScene: () => showStep(shown.peek()),
    release: () =>
      batch(() => {
        stopShowing();
        stopAsking();
        asking.release();
        stopJudging();
        stopTelling();
      }),
  };
}

/** Nothing of a prediction is to be shown: its verdict is there, or another question is in view and its verdict recorded. */
const asksOther = ({ phase, judgement }: Player, right: boolean | null): boolean =>
  judgement !== null || phase === "again" || (phase === "ask" && right !== null);

/** The step's scene; a pause and a slower pace belong to the reader, and a dye pulse is a count that only rises. */
function sceneOfStep(lesson: Lesson, index: number, { view }: SceneState): SceneState {
  const wanted = stepState(lesson, index);
  const released = index > 0 ? stepState(lesson, index - 1).view.dye : 0;
  const dye = view.dye + Math.max(0, wanted.view.dye - released);
  return { ...wanted, view: { ...wanted.view, paused: view.paused, dye } };
}
