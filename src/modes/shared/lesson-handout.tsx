/** The page for families made from a lesson: the pictures that it turns on, each with its first words, and what to remember. */
import { useSignal } from "@preact/signals";
import { useEffect, useMemo } from "preact/hooks";
import { t } from "../../i18n/index.ts";
import { findStep, type Lesson } from "../../lesson/lesson.ts";
import type { Library } from "../../lesson/library.ts";
import { namesRead, requestsOf, situationOf } from "../../lesson/situation.ts";
import { statesAround, stepState } from "../../lesson/states.ts";
import { entryAt } from "../../sim/checked/present.ts";
import { Script } from "../../ui/lesson/script.tsx";
import { Handout } from "../../ui/take-away/handout.tsx";
import { knownAnswers } from "./lesson/known-answers.ts";
import { voiceOf } from "./lesson/voice-of.ts";
import type { Context } from "./mode.ts";
import { settled } from "./settled.ts";

/** px: sharp at 87 mm on paper, where `floor` is about 7 points */
const PICTURE = { width: 1200, height: 750, floor: 34 } as const;

/** As many as one page holds. */
const MAX = 4;

/** The first step, and those that answer a prediction; where a lesson asks few, others in their order. */
export function picturedSteps(lesson: Lesson): readonly number[] {
  const reveals = lesson.steps.flatMap(({ question }) =>
    question?.kind === "predict" ? [findStep(lesson, question.reveal)] : [],
  );
  const explaining = lesson.steps.flatMap(({ question }, index) => (question ? [] : [index]));
  const chosen = [...new Set([0, ...reveals, ...explaining, ...lesson.steps.keys()])].slice(0, MAX);
  return chosen.sort((a, b) => a - b);
}

export interface LessonHandoutProps {
  readonly context: Context;
  readonly library: Library;
  readonly lesson: Lesson;
  readonly onClose: () => void;
}

export function LessonHandout({ context, library, lesson, onClose }: LessonHandoutProps) {
  const known = useMemo(() => knownAnswers(context.session.chain), [context.session]);
  const images = useSignal<readonly string[]>([]);
  const steps = useMemo(
    () =>
      picturedSteps(lesson).map((index) => {
        const step = entryAt(lesson.steps, index);
        const states = statesAround(lesson, index);
        for (const request of requestsOf(namesRead(step), states)) known.want(request);
        return { index, step, states };
      }),
    [lesson],
  );
  useEffect(() => {
    const cancel = new AbortController();
    void drawSteps(
      context,
      steps.map(({ index }) => stepState(lesson, index)),
      (address) => {
        images.value = [...images.peek(), address];
      },
      cancel.signal,
    );
    return () => cancel.abort();
  }, [lesson]);
  return (
    <Handout title={lesson.title} onClose={onClose}>
      {images.value.length < steps.length && (
        <p role="status" class="off-paper">
          {t("lecture.stills.progress", { done: images.value.length + 1, count: steps.length })}
        </p>
      )}
      <div class="sheet-pictures">
        {steps.map(({ step, states }, place) => (
          <figure key={step.id}>
            {images.value[place] && <img src={images.value[place]} alt="" />}
            <figcaption>
              <strong>{step.title}</strong>
              <Script
                step={step}
                voice={voiceOf(library, situationOf(states, known.exactly), "plain", null)}
                paragraphs={1}
              />
            </figcaption>
          </figure>
        ))}
      </div>
      <p class="sheet-remember">
        <strong>{t("lesson.remember")}</strong> {lesson.remember}
      </p>
    </Handout>
  );
}

/** One after the other on the page's one stage, which is left as it was. */
async function drawSteps(
  context: Context,
  states: readonly ReturnType<typeof stepState>[],
  onPicture: (address: string) => void,
  cancel: AbortSignal,
): Promise<void> {
  const { session, stage } = context;
  const before = session.scene.peek();
  const hide = stage.show(PICTURE.floor);
  try {
    for (const state of states) {
      // Arrows for paper; no dye, whose moment paper cannot show.
      session.show({ ...state, view: { ...state.view, streamlines: true, dye: before.view.dye } });
      await settled(context, cancel);
      if (cancel.aborted) return;
      const canvas = await stage.snapshot(PICTURE.width, PICTURE.height, {
        theme: "paper",
        floor: PICTURE.floor,
      });
      onPicture(canvas.toDataURL("image/png"));
    }
  } finally {
    hide();
    session.show(before);
  }
}
