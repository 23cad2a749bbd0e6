/** The end of a lesson: the one thing, a prompt to say it in one's own words, what was understood, the sources. */
import type { Ref } from "preact";
import { SourceList } from "../../interface/lesson/source-mark.tsx";
import { progressOf } from "../../lesson/player.ts";
import { scoreOf } from "../../lesson/progress.ts";
import type { Shelf } from "../../lesson/shelf.ts";
import { t } from "../../words/index.ts";
import type { LessonRun } from "../lesson/lesson-run.ts";

export interface EndingProps {
  readonly run: LessonRun;
  readonly shelf: Shelf;
  readonly heading: Ref<HTMLHeadingElement>;
  readonly homeHref: string;
}

export function Ending({ run, shelf, heading, homeHref }: EndingProps) {
  const { lesson } = run;
  return (
    <>
      <h2 ref={heading} tabIndex={-1}>
        {t("lesson.remember")}
      </h2>
      <p class="remember">{lesson.remember}</p>
      {lesson.tell && (
        <>
          <h3>{t("lesson.tell")}</h3>
          <p>{lesson.tell}</p>
        </>
      )}
      <p>{t("lesson.score", { ...scoreOf(progressOf(lesson, run.player.value)) })}</p>
      {lesson.sources.length > 0 && (
        <details>
          <summary>{t("lesson.sources")}</summary>
          <SourceList keys={lesson.sources} sources={shelf.sources} />
        </details>
      )}
      <nav class="lesson-way-on" aria-label={t("lesson.steps")}>
        <button type="button" onClick={() => run.send({ kind: "back" })}>
          {t("lesson.back")}
        </button>
        <a class="button main" href={homeHref}>
          {t("study.lessons")}
        </a>
      </nav>
    </>
  );
}
