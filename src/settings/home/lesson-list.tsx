/** The lessons as links: each opens at its first step, or where it was left. */
import { useSignal } from "@preact/signals";
import { useEffect } from "preact/hooks";
import { loadShelf, type Shelf } from "../../lesson/shelf.ts";
import { language, t } from "../../words/index.ts";
import { AT_HOME, writePlace } from "../where.ts";

export function LessonList() {
  const shelf = useSignal<Shelf | null>(null);
  const tag = language();
  useEffect(() => {
    void loadShelf(tag).then((loaded) => {
      shelf.value = loaded;
    });
  }, [shelf, tag]);
  return (
    <section aria-labelledby="lessons">
      <h2 id="lessons">{t("home.lessons")}</h2>
      <ol class="lesson-list">
        {shelf.value?.lessons.map(({ id, number, title, minutes, language: own }) => (
          <li key={id}>
            <a
              href={writePlace({ ...AT_HOME, setting: "study", lesson: id, language: tag })}
              lang={own === tag ? undefined : own}
            >
              <span class="lesson-number">{number}</span>
              <span class="lesson-title">{title}</span>
              <span class="lesson-minutes">{t("home.lesson.minutes", { minutes })}</span>
            </a>
          </li>
        ))}
      </ol>
    </section>
  );
}
