/** The page for families made from a lesson: the steps that are chosen, each with its first words and its picture, and what to remember. */
import { useEffect, useMemo } from "preact/hooks";
import { t } from "../../../i18n/index.ts";
import type { Lesson } from "../../../lesson/lesson.ts";
import type { Library } from "../../../lesson/library/library.ts";
import { namesRead, requestsOf, situationOf } from "../../../lesson/model/situation.ts";
import { statesAround } from "../../../lesson/model/states.ts";
import { entryAt } from "../../../sim/checked/present.ts";
import { Script } from "../../../ui/lesson/script.tsx";
import { Handout } from "../../../ui/take-away/handout.tsx";
import { knownAnswers } from "../lesson/known-answers.ts";
import { voiceOf } from "../lesson/voice-of.ts";
import type { Context } from "../mode.ts";
import { choiceOf, chosenSteps, isWide } from "./handout-choice.ts";
import { HandoutSteps } from "./handout-steps.tsx";
import { stepPictures } from "./step-pictures.ts";
import "./handout.css";

export interface LessonHandoutProps {
  readonly context: Context;
  readonly library: Library;
  readonly lesson: Lesson;
  readonly onClose: () => void;
}

export function LessonHandout({ context, library, lesson, onClose }: LessonHandoutProps) {
  const known = useMemo(() => knownAnswers(context.session.chain), [context.session]);
  const choice = choiceOf(lesson);
  const steps = useMemo(
    () =>
      chosenSteps(lesson, choice.value).map(({ index, pictured }) => {
        const step = entryAt(lesson.steps, index);
        const states = statesAround(lesson, index);
        for (const request of requestsOf(namesRead(step), states)) known.want(request);
        return { index, pictured, step, states };
      }),
    [lesson, choice.value],
  );
  const pictures = useMemo(() => stepPictures(context, lesson), [lesson]);
  const wanted = steps.filter(({ pictured }) => pictured).map(({ index }) => index);
  useEffect(() => pictures.want(wanted), [pictures, steps]);
  useEffect(() => () => pictures.stop(), [pictures]);
  const images = pictures.drawn.value;
  const done = wanted.filter((index) => images.has(index)).length;
  return (
    <Handout
      title={lesson.title}
      written={lesson.language}
      choice={<HandoutSteps lesson={lesson} choice={choice} />}
      onClose={onClose}
    >
      {done < wanted.length && (
        <p role="status" class="off-paper">
          {t("lecture.stills.progress", { done: done + 1, count: wanted.length })}
        </p>
      )}
      <div class="sheet-pictures">
        {steps.map(({ index, pictured, step, states }) => (
          <figure key={step.id} class={pictured && isWide(lesson, index) ? "wide" : ""}>
            {pictured && images.has(index) && <img src={images.get(index)} alt="" />}
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
