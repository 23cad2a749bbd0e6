/** The lessons with what was done in each, and the learner's record to keep, take along or erase. */
import { language, t } from "../../i18n/index.ts";
import { QUIZ_LENGTH, quizOf } from "../../lesson/judge/quiz.ts";
import type { Lesson } from "../../lesson/lesson.ts";
import type { Course } from "../../lesson/library/lesson-course.ts";
import { type LessonProgress, type Progress, scoreOf } from "../../lesson/progress/progress.ts";
import { Cautions } from "../../ui/cautions.tsx";
import { GLOSSARY, PACKAGE, QUIZ, SOURCES } from "../place-faults.ts";
import { AT_HOME, writePlace } from "../shared/address/place.ts";
import { LanguageChoice } from "../shared/bar/language-choice.tsx";
import { NewerVersion } from "../shared/offline/newer-version.tsx";
import { courseHere } from "../shared/own/course-here.ts";
import { LeaveLink } from "./leave-link.tsx";
import { OwnLessons } from "./own-files.tsx";
import { RecordSection } from "./record-section.tsx";
import type { StudyProps } from "./study-props.ts";

export function StudyHome({ context, library, kept }: StudyProps) {
  const progress = kept.progress.value;
  const course = courseHere();
  const there = { ...AT_HOME, language: context.place.value.language };
  const lessonHref = (lesson: string) => writePlace({ ...there, mode: "study", lesson });
  const latest = library.lessons.find(({ id }) => id === progress.latest);
  return (
    <div class="study-home">
      <header class="top">
        {course ? (
          <p class="wordmark">{t("name")}</p>
        ) : (
          <a class="wordmark" href={writePlace(there)} aria-label={t("bench.home")}>
            {t("name")}
          </a>
        )}
        <LanguageChoice address={context.address} quietLabel />
      </header>
      <main>
        <h1>{t("study.title")}</h1>
        <p class="study-lead">{t("study.lead")}</p>
        {course && <CourseRule course={course} />}
        <NewerVersion />
        {kept.wayBack && (
          <p class="actions">
            <LeaveLink {...kept} />
          </p>
        )}
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
        {!course && (
          <>
            <OwnLessons authorHref={writePlace({ ...there, mode: "author" })} />
            <section aria-labelledby="package">
              <h2 id="package">{t("study.package")}</h2>
              <p>{t("study.package.what")}</p>
              <p class="actions">
                <a class="button" href={writePlace({ ...there, mode: "study", more: { page: PACKAGE } })}>
                  {t("study.package.open")}
                </a>
              </p>
            </section>
          </>
        )}
        <section aria-labelledby="quiz">
          <h2 id="quiz">{t("study.quiz")}</h2>
          <p>{t("study.quiz.lead", { count: QUIZ_LENGTH })}</p>
          <p class="actions">
            <a class="button" href={writePlace({ ...there, mode: "study", more: { page: QUIZ } })}>
              {t("study.quiz.open")}
            </a>
          </p>
          <QuizResults progress={progress} />
        </section>
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
        <RecordSection {...{ context, library, kept }} />
        <Cautions />
      </main>
    </div>
  );
}

/** Whoever learns knows from the start what counts. */
const CourseRule = ({ course: { passMark, completedWhen } }: { readonly course: Course }) => (
  <p>
    {t(`study.course.${completedWhen}`)}{" "}
    {passMark !== null && t("study.course.passed", { percent: Math.round(100 * passMark) })}
  </p>
);

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

const QuizResults = ({ progress }: { readonly progress: Progress }) => (
  <ul class="plain-list">
    {quizOf(progress).results.map(({ day, right, asked }, index) => (
      <li key={index}>
        {day}: {t("study.quiz.result", { right, asked })}
      </li>
    ))}
  </ul>
);
