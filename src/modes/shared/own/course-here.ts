/** The course that this page was packaged with; none in a kit that is no package. */
import { COURSE_ELEMENT, type Course, readCourse } from "../../../lesson/library/lesson-course.ts";
import type { Fault } from "../../../sim/faults.ts";

let found: Course | Fault | null | undefined;

function foundHere(): Course | Fault | null {
  if (found === undefined) {
    const element = document.getElementById(COURSE_ELEMENT);
    found = element && readCourse(element.textContent ?? "");
  }
  return found;
}

const isFault = (what: Course | Fault | null): what is Fault => what !== null && "found" in what;

export function courseHere(): Course | null {
  const here = foundHere();
  return isFault(here) ? null : here;
}

/** Why the page's course cannot be read; null where it can, and where there is none. */
export function courseFault(): Fault | null {
  const here = foundHere();
  return isFault(here) ? here : null;
}
