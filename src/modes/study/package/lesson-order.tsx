/** Which lessons, in which order: a box to tick and two buttons for each. */
import { t } from "../../../i18n/index.ts";
import type { Lesson } from "../../../lesson/lesson.ts";

export interface LessonOrderProps {
  readonly lessons: readonly Lesson[];
  /** ids, in order */
  readonly chosen: readonly string[];
  readonly onChoose: (chosen: readonly string[]) => void;
}

export function LessonOrder({ lessons, chosen, onChoose }: LessonOrderProps) {
  const taken = chosen.flatMap((id) => lessons.find((lesson) => lesson.id === id) ?? []);
  const left = lessons.filter(({ id }) => !chosen.includes(id));
  const move = (from: number, to: number) => {
    const moved = [...chosen];
    moved.splice(to, 0, ...moved.splice(from, 1));
    onChoose(moved);
  };
  return (
    <fieldset class="package-lessons">
      <legend>{t("study.package.lessons", { count: chosen.length })}</legend>
      <ol>
        {taken.map((lesson, place) => (
          <li key={lesson.id}>
            <Box lesson={lesson} on onChange={() => onChoose(chosen.filter((id) => id !== lesson.id))} />
            <button
              type="button"
              aria-label={t("lesson.move.up", { item: lesson.title })}
              disabled={place === 0}
              onClick={() => move(place, place - 1)}
            >
              ↑
            </button>
            <button
              type="button"
              aria-label={t("lesson.move.down", { item: lesson.title })}
              disabled={place === taken.length - 1}
              onClick={() => move(place, place + 1)}
            >
              ↓
            </button>
          </li>
        ))}
      </ol>
      {left.length > 0 && (
        <ul>
          {left.map((lesson) => (
            <li key={lesson.id}>
              <Box lesson={lesson} on={false} onChange={() => onChoose([...chosen, lesson.id])} />
            </li>
          ))}
        </ul>
      )}
      <p class="actions">
        <button type="button" onClick={() => onChoose(lessons.map(({ id }) => id))}>
          {t("study.package.all")}
        </button>
        <button type="button" onClick={() => onChoose([])}>
          {t("study.package.none")}
        </button>
      </p>
    </fieldset>
  );
}

interface BoxProps {
  readonly lesson: Lesson;
  readonly on: boolean;
  readonly onChange: () => void;
}

const Box = ({ lesson, on, onChange }: BoxProps) => (
  <label class="switch">
    <input type="checkbox" checked={on} onChange={onChange} />
    <span lang={lesson.language}>{lesson.title}</span>
  </label>
);
