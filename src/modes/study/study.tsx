/** Studying alone: the list of lessons, one lesson, or a lesson as text. */
import { useComputed, useSignal } from "@preact/signals";
import { useEffect } from "preact/hooks";
import { t } from "../../i18n/index.ts";
import { type Course, libraryOfCourse } from "../../lesson/library/lesson-course.ts";
import { describeFault } from "../../sim/faults.ts";
import { PACKAGE, QUIZ } from "../place-faults.ts";
import { LessonHandout } from "../shared/handout/lesson-handout.tsx";
import { useLibrary } from "../shared/lesson/use-library.ts";
import type { Context } from "../shared/mode.ts";
import { courseFault, courseHere } from "../shared/own/course-here.ts";
import { keptVersion } from "../shared/preferences.ts";
import { type KeptProgress, openProgress } from "./kept-progress.ts";
import { LessonPage } from "./lesson-page.tsx";
import { LessonText } from "./lesson-text.tsx";
import { PackageDoor } from "./package/package-door.tsx";
import { QuizPage } from "./quiz-page.tsx";
import { Reading } from "./reading.tsx";
import { StudyHome } from "./study-home.tsx";
import type { StudyProps } from "./study-props.ts";
import { VisitOver } from "./visit-over.tsx";

/** One record for the visit: a course system is greeted once. */
let opening: Promise<KeptProgress> | null = null;

function openCourse(course: Course | null): Promise<KeptProgress> {
  if (!course) return openProgress();
  keptVersion.value = course.textVersion;
  return openProgress(undefined, course);
}

interface Props {
  readonly context: Context;
}

/** Of a course that cannot be read nothing is opened: no lesson, and no record at the course system. */
export function Study({ context }: Props) {
  const fault = courseFault();
  if (!fault) return <Lessons context={context} />;
  return (
    <p class="study-loading" role="alert">
      {t("study.course.unreadable", { fault: describeFault(fault) })}
    </p>
  );
}

function Lessons({ context }: Props) {
  const whole = useLibrary();
  const course = courseHere();
  const library = useComputed(
    () => whole.value && (course ? libraryOfCourse(whole.value, course) : whole.value),
  );
  const kept = useSignal<KeptProgress | null>(null);
  useEffect(() => {
    opening ??= openCourse(course);
    void opening.then((opened) => {
      kept.value = opened;
    });
  }, []);
  if (!library.value || !kept.value) return <p class="study-loading">{t("study.opening")}</p>;
  return (
    <>
      <Opened context={context} library={library.value} kept={kept.value} />
      {kept.value.voice === "over" && <VisitOver {...kept.value} />}
    </>
  );
}

function Opened(props: StudyProps) {
  const { context, library } = props;
  const { lesson: wanted, more } = context.place.value;
  const lesson = library.lessons.find(({ id }) => id === wanted);
  if (!lesson && more.page === PACKAGE) return <PackageDoor {...props} />;
  if (!lesson && more.page === QUIZ) return <QuizPage key={library.language} {...props} />;
  if (!lesson && more.page) return <Reading {...props} page={more.page} />;
  if (!lesson) return <StudyHome {...props} />;
  if (more.view === "handout")
    return (
      <LessonHandout
        {...{ context, lesson }}
        library={library}
        onClose={() => context.address.go({ more: { view: "text" } })}
      />
    );
  if (more.view === "text") return <LessonText {...props} lesson={lesson} />;
  return <LessonPage key={lesson.id} {...props} lesson={lesson} />;
}
