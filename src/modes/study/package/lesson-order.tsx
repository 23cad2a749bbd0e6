/** Which lessons, in which order: a box to tick and two buttons for each. A ticked one stays where it is, and so does the focus. */
import { useSignal } from "@preact/signals";
import { t } from "../../../i18n/index.ts";
import type { Lesson } from "../../../lesson/lesson.ts";

export interface LessonOrderProps {
  readonly lessons: readonly Lesson[];
  /** ids, in order */
  readonly chosen: readonly string[];
  readonly onChoose: (chosen: readonly string[]) => void;
}

export function LessonOrder({ lessons, chosen, onChoose }: LessonOrderProps) {
  const ids = lessons.map(({ id }) => id);
  const order = useSignal<readonly string[]>(ids);
  const tick = (these: readonly string[]) => onChoose(order.peek().filter((id) => these.includes(id)));
  const move = (from: number, to: number) => {
    const moved = [...order.peek()];
    moved.splice(to, 0, ...moved.splice(from, 1));
    order.value = moved;
    tick(chosen);
  };
  return (
    <fieldset class="package-lessons">
      <legend>{t("study.package.lessons", { count: chosen.length })}</legend>
      <ol>
        {order.value.map((id, place) => {
          const lesson = lessons.find((each) => each.id === id);
          if (!lesson) return null;
          const on = chosen.includes(id);
          return (
            <li key={id}>
              <label class="switch">
                <input
                  type="checkbox"
                  checked={on}
                  onChange={() => tick(on ? chosen.filter((each) => each !== id) : [...chosen, id])}
                />
                <span lang={lesson.language}>{lesson.title}</span>
              </label>
              <button
                type="button"
                aria-label={t("lesson.move.up", { item: lesson.title })}
                aria-disabled={place === 0 || undefined}
                onClick={() => place > 0 && move(place, place - 1)}
              >
                ↑
              </button>
              <button
                type="button"
                aria-label={t("lesson.move.down", { item: lesson.title })}
                aria-disabled={place === ids.length - 1 || undefined}
                onClick={() => place < ids.length - 1 && move(place, place + 1)}
              >
                ↓
              </button>
            </li>
          );
        })}
      </ol>
      <p class="actions">
        <button type="button" onClick={() => tick(ids)}>
          {t("study.package.all")}
        </button>
        <button type="button" onClick={() => tick([])}>
          {t("study.package.none")}
        </button>
      </p>
    </fieldset>
  );
}
