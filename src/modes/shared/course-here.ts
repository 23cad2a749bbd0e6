/** The course that this page was packaged with; null in a kit that is no package. */
import { COURSE_ELEMENT, type Course, readCourse } from "../../lesson/lesson-course.ts";

let course: Course | null | undefined;

export function courseHere(): Course | null {
  course ??= readCourse(document.getElementById(COURSE_ELEMENT)?.textContent ?? null);
  return course;
}
