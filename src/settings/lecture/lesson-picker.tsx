/** Lessons to choose from, whole or step by step. */
import type { Lesson } from "../../lesson/lesson.ts";
import { t } from "../../words/index.ts";
import type { Stop } from "./playlist.ts";
import { stopsOf } from "./stops.ts";

export interface LessonPickerProps {
  readonly lessons: readonly Lesson[];
  readonly onAdd: (stops: readonly Stop[]) => void;
}

export const LessonPicker = ({ lessons, onAdd }: LessonPickerProps) => (
  <div>
    {lessons.map((lesson) => (
      <details key={lesson.id}>
        <summary>
          {lesson.title}
          <span class="quiet-text">{t("lecture.steps", { count: lesson.steps.length })}</span>
        </summary>
        <button
          type="button"
          aria-label={t("lecture.addLesson", { title: lesson.title })}
          onClick={() => onAdd(stopsOf(lesson))}
        >
          {t("lecture.addLesson", { title: lesson.title })}
        </button>
        <ol class="picker-steps">
          {lesson.steps.map((step) => (
            <li key={step.id}>
              <span>{step.title}</span>
              <button
                type="button"
                aria-label={t("lecture.addStep", { title: step.title })}
                onClick={() => onAdd([{ lesson: lesson.id, step: step.id }])}
              >
                {t("lecture.add")}
              </button>
            </li>
          ))}
        </ol>
      </details>
    ))}
  </div>
);
