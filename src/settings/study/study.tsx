/** Studying alone: the list of lessons, one lesson, or a lesson as text. */
import { useSignal } from "@preact/signals";
import { useEffect } from "preact/hooks";
import { loadShelf, type Shelf } from "../../lesson/shelf.ts";
import { language, t } from "../../words/index.ts";
import type { Context } from "../setting.ts";
import { LessonHandout } from "../shell/lesson-handout.tsx";
import { type KeptProgress, openProgress } from "./kept-progress.ts";
import { LessonPage } from "./lesson-page.tsx";
import { LessonText } from "./lesson-text.tsx";
import { Reading } from "./reading.tsx";
import { StudyHome } from "./study-home.tsx";

/** One record for the visit: a course system is greeted once. */
let opening: Promise<KeptProgress> | null = null;

export function Study({ context }: { readonly context: Context }) {
  const shelf = useSignal<Shelf | null>(null);
  const kept = useSignal<KeptProgress | null>(null);
  const tag = language();
  useEffect(() => {
    void loadShelf(tag).then((loaded) => {
      shelf.value = loaded;
    });
    opening ??= openProgress();
    void opening.then((opened) => {
      kept.value = opened;
    });
  }, [tag]);
  const { lesson: wanted, more } = context.place.value;
  if (!shelf.value || !kept.value) return <p class="study-loading">{t("study.opening")}</p>;
  const lesson = shelf.value.lessons.find(({ id }) => id === wanted);
  const props = { context, shelf: shelf.value, kept: kept.value };
  if (!lesson && more.page) return <Reading {...props} page={more.page} />;
  if (!lesson) return <StudyHome {...props} />;
  if (more.view === "handout")
    return (
      <LessonHandout
        {...{ context, lesson }}
        shelf={shelf.value}
        onClose={() => {
          context.place.value = { ...context.place.peek(), more: { view: "text" } };
        }}
      />
    );
  if (more.view === "text") return <LessonText {...props} lesson={lesson} />;
  return <LessonPage key={`${lesson.id} ${lesson.language}`} {...props} lesson={lesson} />;
}
