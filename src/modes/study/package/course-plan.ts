/** From what is chosen on the page to the package that is made. */
import { language, t } from "../../../i18n/index.ts";
import type { Lesson } from "../../../lesson/lesson.ts";
import type { CompletedWhen, Course } from "../../../lesson/library/lesson-course.ts";
import type { Library } from "../../../lesson/library/library.ts";
import type { OwnFile } from "../../../lesson/own/own-source.ts";
import { fingerprint } from "../../../lesson/read/lesson-version.ts";
import type { PackagePlan, Standard } from "../../../lms/package/course-package.ts";
import type { TextVersion } from "../../../ui/lesson/voice.ts";

export interface CourseChoice {
  /** ids, in order */
  readonly lessons: readonly string[];
  /** "" = that of its only lesson, else the kit's own */
  readonly title: string;
  readonly textVersion: TextVersion;
  readonly standard: Standard;
  /** Each lesson an item of its own. */
  readonly apart: boolean;
  /** 0 to 1; null = nothing is to be passed */
  readonly passMark: number | null;
  readonly completedWhen: CompletedWhen;
}

/** In the page's language, which is the course's. `own`: the files of own lessons. */
export function planOf(choice: CourseChoice, library: Library, own: readonly OwnFile[]): PackagePlan {
  const lessons = choice.lessons.flatMap((id) => library.lessons.find((lesson) => lesson.id === id) ?? []);
  const title = choice.title.trim() || usualTitle(lessons);
  const description = `${t("home.what")} ${t("caution.short")}`;
  const course = (these: readonly Lesson[]): Course => ({
    version: 1,
    lessons: these.map(({ id }) => id),
    textVersion: choice.textVersion,
    passMark: choice.passMark,
    completedWhen: choice.completedWhen,
    own: these.flatMap((lesson) => (library.own.has(lesson.id) ? fileOf(lesson, own) : [])),
  });
  const whole = { id: "lessons", title, description, course: course(lessons) };
  const items = choice.apart
    ? lessons.map((lesson) => ({
        id: lesson.id,
        title: lesson.title,
        description: `${lesson.aim}. ${t("caution.short")}`,
        course: course([lesson]),
      }))
    : [whole];
  const id = `lungward-${fingerprint(JSON.stringify([choice, language(), whole.course.own]))}`;
  const { standard, passMark } = choice;
  return { id, title, description, language: language(), passMark, standard, items };
}

/** What a course is called unless something else is typed. */
export const usualTitle = (lessons: readonly Pick<Lesson, "title">[]): string =>
  (lessons.length === 1 && lessons[0]?.title) || t("home.title");

const fileOf = ({ file }: Lesson, own: readonly OwnFile[]): { file: string; text: string }[] => {
  const found = own.find((each) => each.file === file);
  return found ? [{ ...found }] : [];
};

/** Of the file: what it is, in which language, made when. `date`: RFC 3339 */
export const packageName = ({ standard, language: tag, id }: PackagePlan, date: string): string =>
  `${id}-${standard}-${tag}-${date.slice(0, 10)}.zip`;
