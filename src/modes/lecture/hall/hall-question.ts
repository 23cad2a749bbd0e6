/** Which question the hall is asked at a stop, and what the model answers to it. */
import { computed, effect, type ReadonlySignal, signal } from "@preact/signals";
import { MAX_CHOICES } from "../../../audience/room-code.ts";
import { RIGHT_NUMBER } from "../../../lesson/judge/judge-number.ts";
import type { Words } from "../../../lesson/lesson.ts";
import { findStep, type Lesson, type Question } from "../../../lesson/lesson.ts";
import { predictionFor } from "../../../lesson/player.ts";
import { numbersToPick } from "../../../ui/lesson/answer-number.tsx";
import type { Voice } from "../../../ui/lesson/voice.ts";
import { knownAnswers } from "../../shared/lesson/known-answers.ts";
import { judgeByModel } from "../../shared/lesson/question-in-view.ts";
import type { Session } from "../../shared/session.ts";
import type { ScriptRun } from "../talk/script-run.ts";
import { stepShown } from "../talk/stops.ts";

export interface HallQuestion {
  readonly key: string;
  readonly question: Question;
  readonly lesson: Lesson;
  readonly step: number;
  /** The step shown is the one that resolves it. */
  readonly resolved: boolean;
}

/** null where the step neither asks the hall something nor resolves what it was asked. */
export const hallQuestion = (script: ScriptRun): ReadonlySignal<HallQuestion | null> =>
  computed(() => {
    const run = script.run.value;
    const step = stepShown(script.stop.value);
    if (!run || !step) return null;
    // The lesson as it is dealt: answers stand where the stage shows them.
    const asked = run.question.value;
    if (asked && step.question?.room !== false) return { ...asked, resolved: false };
    const prediction = predictionFor(run.lesson, step);
    if (!prediction?.question?.room) return null;
    return {
      key: `${run.lesson.id}#${prediction.id}`,
      question: prediction.question,
      lesson: run.lesson,
      step: findStep(run.lesson, prediction.id),
      resolved: true,
    };
  });

export interface HallChoice {
  readonly id: string;
  readonly say: Words;
}

/** As many as there are keys; none where a number is asked for freely. */
export function choicesOf(question: Question, voice: Voice): readonly HallChoice[] {
  if ("answers" in question) return question.answers.slice(0, MAX_CHOICES);
  return question.kind === "number" ? numbersToPick(question, voice).slice(0, MAX_CHOICES) : [];
}

/** The id of the choice, or the number, that the model gives; null while it is at work. */
export function modelChoice(
  session: Session,
  asked: ReadonlySignal<HallQuestion | null>,
): { readonly truth: ReadonlySignal<string | number | null>; readonly release: () => void } {
  const known = knownAnswers(session.chain);
  const truth = signal<string | number | null>(null);
  const release = effect(() => {
    const view = asked.value;
    truth.value = null;
    if (!view) return;
    if (view.question.kind === "number") truth.value = RIGHT_NUMBER;
    const format = view.question.kind === "estimate" ? view.question.format : null;
    if (!format && !("answers" in view.question)) return;
    const first = "answers" in view.question ? (view.question.answers[0]?.id ?? "") : 0;
    void judgeByModel(known, view, first).then((judgement) => {
      const found = judgement?.truth;
      if (asked.peek()?.key !== view.key) return;
      // As it is written: stage and phones say one number, and it lies in the bar that is marked.
      if (format && typeof found === "number") truth.value = Number(found.toFixed(format.digits));
      if (!format && typeof found === "string") truth.value = found;
    });
  });
  return { truth, release };
}
