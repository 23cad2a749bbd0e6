/** The lessons as links: each opens at its first step, or where it was left. Loaded when they come into view. */
import { useSignal } from "@preact/signals";
import { useEffect, useRef } from "preact/hooks";
import type { Shelf } from "../../lesson/shelf.ts";
import { language, t } from "../../words/index.ts";
import { AT_HOME, writePlace } from "../where.ts";

export function LessonList() {
  const shelf = useSignal<Shelf | null>(null);
  const tag = language();
  const section = useRef<HTMLElement>(null);
  useEffect(() => {
    const seen = new IntersectionObserver((entries) => {
      if (!entries.some(({ isIntersecting }) => isIntersecting)) return;
      seen.disconnect();
      void import("../../lesson/shelf.ts")
        .then(({ loadShelf }) => loadShelf(tag))
        .then((loaded) => {
          shelf.value = loaded;
        });
    });
    seen.observe(section.current!);
    return () => seen.disconnect();
  }, [shelf, tag]);
  return (
    <section aria-labelledby="lessons" ref={section}>
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
