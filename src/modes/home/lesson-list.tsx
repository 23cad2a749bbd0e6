/** The lessons as links: each opens at its first step, or where it was left. Loaded when they come into view. */
import { useSignal } from "@preact/signals";
import { useEffect, useRef } from "preact/hooks";
import { language, t } from "../../i18n/index.ts";
import type { Library } from "../../lesson/library/library.ts";
import { present } from "../../sim/checked/present.ts";
import { AT_HOME, writePlace } from "../shared/address/place.ts";
import { tellMissedPart } from "../shared/page-notes.tsx";

export function LessonList() {
  const library = useSignal<Library | null>(null);
  const tag = language();
  const section = useRef<HTMLElement>(null);
  useEffect(() => {
    const seen = new IntersectionObserver((entries) => {
      if (!entries.some(({ isIntersecting }) => isIntersecting)) return;
      seen.disconnect();
      void import("../../lesson/library/library.ts")
        .then(({ loadLibrary }) => loadLibrary(tag))
        .then((loaded) => {
          library.value = loaded;
        }, tellMissedPart);
    });
    seen.observe(present(section.current));
    return () => seen.disconnect();
  }, [library, tag]);
  return (
    <section aria-labelledby="lessons" ref={section}>
      <h2 id="lessons">{t("home.lessons")}</h2>
      <ol class="lesson-list">
        {library.value?.lessons.map(({ id, number, title, minutes, language: own }) => (
          <li key={id}>
            <a
              href={writePlace({ ...AT_HOME, mode: "study", lesson: id, language: tag })}
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
