/** The lessons with what was done in each, and the learner's record to keep, take along or erase. */
import { useSignal } from "@preact/signals";
import { language, t } from "../../i18n/index.ts";
import type { Lesson } from "../../lesson/lesson.ts";
import type { Library } from "../../lesson/library.ts";
import { type LessonProgress, scoreOf } from "../../lesson/progress.ts";
import { Cautions } from "../../ui/cautions.tsx";
import { Confirm } from "../../ui/confirm.tsx";
import { GLOSSARY, SOURCES } from "../place-faults.ts";
import type { Context } from "../shared/mode.ts";
import { AT_HOME, writePlace } from "../shared/place.ts";
import { type KeptProgress, scoreOfAll } from "./kept-progress.ts";
import { saveRecord } from "./learner-record.ts";
import { OwnLessons } from "./own-files.tsx";

export interface StudyProps {
  readonly context: Context;
  readonly library: Library;
  readonly kept: KeptProgress;
}

export function StudyHome({ context, library, kept }: StudyProps) {
  const erasing = useSignal(false);
  const progress = kept.progress.value;
  const there = { ...AT_HOME, language: context.place.value.language };
  const lessonHref = (lesson: string) => writePlace({ ...there, mode: "study", lesson });
  const latest = library.lessons.find(({ id }) => id === progress.latest);
  return (
    <div class="study-home">
      <header class="top">
        <a class="wordmark" href={writePlace(there)} aria-label={t("bench.home")}>
          {t("name")}
        </a>
      </header>
      <main>
        <h1>{t("study.title")}</h1>
        <p class="study-lead">{t("study.lead")}</p>
        {latest && !progress.lessons[latest.id]?.finished && (
          <p>
            <a class="button main" href={lessonHref(latest.id)}>
              {t("study.goOn", { lesson: latest.title })}
            </a>
          </p>
        )}
        {library.faults.length > 0 && (
          <p class="note" role="status">
            {t("study.unreadable", {
              files: [...new Set(library.faults.map(({ path }) => path.replace(/:\d+$/, "")))].join(", "),
            })}
          </p>
        )}
        <ol class="lesson-cards">
          {library.lessons.map((lesson) => (
            <LessonCard
              key={lesson.id}
              lesson={lesson}
              done={progress.lessons[lesson.id]}
              own={library.own.has(lesson.id)}
              href={lessonHref(lesson.id)}
            />
          ))}
        </ol>
        <OwnLessons authorHref={writePlace({ ...there, mode: "author" })} />
        <nav aria-labelledby="reading">
          <h2 id="reading">{t("study.reading")}</h2>
          <ul class="plain-list">
            {[
              ...Object.entries(library.pages).map(([page, { title }]) => ({ page, title })),
              { page: GLOSSARY, title: t("study.glossary") },
              { page: SOURCES, title: t("lesson.sources") },
            ].map(({ page, title }) => (
              <li key={page}>
                <a href={writePlace({ ...there, mode: "study", more: { page } })}>{title}</a>
              </li>
            ))}
          </ul>
        </nav>
        <section class="study-record" aria-labelledby="record">
          <h2 id="record">{t("study.record")}</h2>
          <p>{t("lesson.score", { ...scoreOfAll(progress) })}</p>
          <p class="quiet-text">{t(`study.kept.${kept.keeps.value ? kept.voice : "lost"}`)}</p>
          <div class="actions">
            <button
              type="button"
              onClick={() => void saveRecord(context.session.chain, progress, library.lessons, "html")}
            >
              {t("study.save")}
            </button>
            <button
              type="button"
              onClick={() => void saveRecord(context.session.chain, progress, library.lessons, "json")}
            >
              {t("study.saveData")}
            </button>
            {kept.erase && (
              <button
                type="button"
                onClick={() => {
                  erasing.value = true;
                }}
              >
                {t("study.erase")}
              </button>
            )}
          </div>
        </section>
        <Cautions />
      </main>
      {erasing.value && (
        <Confirm
          title={t("study.erase.title")}
          what={t("study.erase.what")}
          no={t("study.erase.no")}
          yes={t("study.erase.yes")}
          onNo={() => {
            erasing.value = false;
          }}
          onYes={() => {
            kept.erase?.();
            erasing.value = false;
          }}
        />
      )}
    </div>
  );
}

interface LessonCardProps {
  readonly lesson: Lesson;
  readonly done: LessonProgress | undefined;
  readonly own: boolean;
  readonly href: string;
}

function LessonCard({ lesson, done, own, href }: LessonCardProps) {
  const seen = done?.seen.length ?? 0;
  const state = done?.finished ? "finished" : seen > 0 ? "begun" : "new";
  return (
    <li class="lesson-card" lang={lesson.language === language() ? undefined : lesson.language}>
      <a href={href}>
        <span class="lesson-number" aria-hidden="true">
          {lesson.number}
        </span>
        <strong>{lesson.title}</strong>
        <span class="quiet-text">{lesson.aim}</span>
        <span class="lesson-state" lang={language()}>
          {own && <strong class="own-mark">{t("study.own.mark")}</strong>}{" "}
          {t("home.lesson.minutes", { minutes: lesson.minutes })}{" "}
          {t(`study.state.${state}`, { seen, steps: lesson.steps.length })}{" "}
          {done?.finished && t("lesson.score", { ...scoreOf(done) })}
        </span>
        <span
          class="lesson-way"
          aria-hidden="true"
          style={{ "--done": String(seen / lesson.steps.length) }}
        />
      </a>
    </li>
  );
}
