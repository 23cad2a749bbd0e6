/** Lessons to choose from: begun at once as they are, or added whole or step by step. */

import { t } from "../../../i18n/index.ts";
import type { Lesson } from "../../../lesson/lesson.ts";
import { AT_HOME, writePlace } from "../../shared/address/place.ts";
import type { Stop } from "../talk/own-stops.ts";
import { stopsFor, stopsOf } from "../talk/stops.ts";
import { beginAnew } from "../talk/talk-clock.ts";

export interface LessonPickerProps {
  readonly lessons: readonly Lesson[];
  /** BCP 47 tag of the address, "" = the browser's */
  readonly language: string;
  readonly onAdd: (stops: readonly Stop[]) => void;
}

export const LessonPicker = ({ lessons, language, onAdd }: LessonPickerProps) => (
  <div>
    {lessons.map((lesson) => (
      <div class="picker-lesson" key={lesson.id}>
        <details>
          <summary>
            {lesson.title}
            <span class="quiet-text">{t("lecture.steps", { count: lesson.steps.length })}</span>
          </summary>
          <p class="actions">
            <button
              type="button"
              aria-label={t("lecture.addLesson", { title: lesson.title })}
              onClick={() => onAdd(stopsOf(lesson))}
            >
              {t("lecture.addLesson", { title: lesson.title })}
            </button>
            <a
              class="button"
              href={writePlace({
                ...AT_HOME,
                mode: "study",
                lesson: lesson.id,
                language,
                more: { view: "handout" },
              })}
            >
              {t("take.handout")}
            </a>
          </p>
          <ol class="picker-steps">
            {lesson.steps.map((step) => (
              <li key={step.id}>
                <span>{step.title}</span>
                <button
                  type="button"
                  aria-label={t("lecture.addStep", { title: step.title })}
                  onClick={() => onAdd(stopsFor(lesson, step))}
                >
                  {t("lecture.add")}
                </button>
              </li>
            ))}
          </ol>
        </details>
        <a
          class="button"
          href={writePlace({ ...AT_HOME, mode: "lecture", lesson: lesson.id, step: "1", language })}
          aria-label={t("lecture.beginLesson", { title: lesson.title })}
          onClick={beginAnew}
        >
          {t("lecture.begin")}
        </a>
      </div>
    ))}
  </div>
);
