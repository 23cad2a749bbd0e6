/** A course of three of the kit's lessons as a package, and a learner who takes it without a page. */
import { readFileSync } from "node:fs";
import { unzipSync } from "fflate";
import type { Lesson, Question } from "../../../src/lesson/lesson.ts";
import { type Course, libraryOfCourse, readCourse } from "../../../src/lesson/library/lesson-course.ts";
import type { Library } from "../../../src/lesson/library/library.ts";
import type { OwnFile } from "../../../src/lesson/own/own-source.ts";
import { type LessonProgress, withLesson } from "../../../src/lesson/progress/progress.ts";
import { readLesson } from "../../../src/lesson/read/read.ts";
import { type Kit, packageFiles, type Standard } from "../../../src/lms/package/course-package.ts";
import { zipOf } from "../../../src/lms/package/zip.ts";
import type { RecordAdapter } from "../../../src/lms/record-adapter.ts";
import { openProgress } from "../../../src/modes/study/kept-progress.ts";
import { planOf } from "../../../src/modes/study/package/course-plan.ts";

export const LESSONS = ["04-energy-loss", "03-pathways", "06-fenestration"];

const lessons = LESSONS.map(
  (id) => readLesson(readFileSync(`lessons/en/${id}.md`, "utf8"), `${id}.md`).value!,
);
const library = { lessons, own: new Set() } as unknown as Library;
export const titles = lessons.map(({ title }) => title);

const HTML = `<!doctype html><html><head><meta http-equiv="Content-Security-Policy" content="connect-src 'self'" /><meta charset="utf-8" /></head></html>`;
const kit: Kit = {
  version: "1.0",
  paths: ["index.html", "assets/index-1.js"],
  read: async (path) => new TextEncoder().encode(path === "index.html" ? HTML : "1"),
};

/** Texts by path. @param apart each lesson an item of its own */
export async function packaged(
  standard: Standard,
  apart: boolean,
  from: Library = library,
  own: readonly OwnFile[] = [],
): Promise<Record<string, string>> {
  const plan = planOf(
    {
      lessons: from.lessons.map(({ id }) => id),
      title: "",
      textVersion: "plain",
      standard,
      apart,
      passMark: 0.6,
      completedWhen: "questions",
    },
    from,
    own,
  );
  const chunks = await zipOf(packageFiles(plan, kit));
  const files = unzipSync(new Uint8Array(await new Blob(chunks as BlobPart[]).arrayBuffer()));
  return Object.fromEntries(
    Object.entries(files).map(([path, bytes]) => [path, new TextDecoder().decode(bytes)]),
  );
}

/** The course in the page that an address opens. */
export function courseOf(files: Readonly<Record<string, string>>, address: string): Course {
  const page = files[address.replace(/\?.*/, "")] ?? "";
  const element = new DOMParser().parseFromString(page, "text/html").getElementById("course");
  const course = readCourse(element?.textContent ?? "");
  if ("found" in course) throw new Error(`${address}: ${course.path}`);
  return course;
}

/** One visit: goes on where the last one ended, and answers the next lessons. */
export async function study(
  voice: RecordAdapter,
  course: Course,
  count: number,
  right = true,
  from: Library = library,
) {
  const { keep, progress, keeps, end } = await openProgress(voice, course);
  const own = libraryOfCourse(from, course).lessons;
  const begun = own.filter(({ id }) => progress.peek().lessons[id]?.finished).length;
  const next = own.slice(begun, begun + count);
  for (const lesson of next)
    keep(withLesson(progress.peek(), lesson.id, done(lesson, right)), `${lesson.id}#`, own);
  await end();
  return { begun, keeps: keeps.peek() };
}

const done = ({ steps }: Lesson, right: boolean): LessonProgress => ({
  step: steps.at(-1)!.id,
  seen: steps.map(({ id }) => id),
  finished: true,
  answers: Object.fromEntries(
    steps.flatMap(({ id, question }) =>
      question ? [[id, { given: givenTo(question), right, tries: 1, day: "2026-11-29" }]] : [],
    ),
  ),
  recalled: {},
});

function givenTo(question: Question): string | number | string[] {
  if ("answers" in question) return question.answers[0]!.id;
  return "items" in question ? question.items.map(({ id }) => id) : 1;
}

export const questionCount = (ids: readonly string[]): number =>
  lessons
    .filter(({ id }) => ids.includes(id))
    .flatMap(({ steps }) => steps)
    .filter(({ question }) => question).length;
