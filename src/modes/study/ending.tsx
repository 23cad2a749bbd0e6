/** The end of a lesson: the one thing, a prompt to say it in one's own words, what was understood, the sources. */
import type { Ref } from "preact";
import { t } from "../../i18n/index.ts";
import type { Library } from "../../lesson/library/library.ts";
import { progressOf } from "../../lesson/player.ts";
import { scoreOf } from "../../lesson/progress/progress.ts";
import { SourceList } from "../../ui/lesson/source-mark.tsx";
import type { LessonRun } from "../shared/lesson/lesson-run.ts";
import type { KeptProgress } from "./kept-progress.ts";
import { LeaveLink } from "./leave-link.tsx";

export interface EndingProps {
  readonly run: LessonRun;
  readonly library: Library;
  readonly heading: Ref<HTMLHeadingElement>;
  readonly homeHref: string;
  /** None where a lesson is only looked at. */
  readonly kept?: KeptProgress | undefined;
}

export function Ending({ run, library, heading, homeHref, kept }: EndingProps) {
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
          <SourceList keys={lesson.sources} sources={library.sources} />
        </details>
      )}
      <nav class="lesson-way-on" aria-label={t("lesson.steps")}>
        <button type="button" onClick={() => run.send({ kind: "back" })}>
          {t("lesson.back")}
        </button>
        {kept && <LeaveLink {...kept} />}
        <a class="button main" href={homeHref}>
          {t("study.lessons")}
        </a>
      </nav>
    </>
  );
}
