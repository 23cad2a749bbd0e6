/** The whole checker: a lesson by itself, against the shared files, against the model, and the course as a whole. */
import type { Fault } from "../../sim/faults.ts";
import type { Lesson } from "../lesson.ts";
import { minutesOf } from "../library/minutes.ts";
import { refuseIn } from "../read/read.ts";
import type { Refuse } from "../read/read-prose.ts";
import { checkLibrary, type Library } from "./check-library.ts";
import { checkAgainstModel, type Solve } from "./check-model.ts";
import { checkPlaces } from "./check-places.ts";
import { checkText, checkWhole, familyTexts } from "./check-text.ts";
import { type ReadingGrade, readingGrade } from "./reading-grade.ts";

export interface Report {
  readonly faults: readonly Fault[];
  /** One for each step. */
  readonly grades: readonly ReadingGrade[];
  /** Of the whole lesson's plain version. */
  readonly grade: ReadingGrade;
  /** Share of the right answers at each place, first place first; empty without the model or without such questions. */
  readonly places: readonly number[];
}

/** `solve` null: everything but the model (a translation has the source's states). */
export function checkLesson(lesson: Lesson, library: Library, solve: Solve | null): Report {
  const { refuse, faults } = refuseIn(lesson.file);
  checkLibrary(lesson, library, refuse);
  const { grades, grade } = checkWords(lesson, refuse);
  if (solve) checkAgainstModel(lesson, solve, refuse);
  const places = solve ? checkPlaces(lesson, solve, refuse) : [];
  return { faults, grades, grade, places };
}

/** What can be said of a lesson's words by themselves. */
export function checkWords(lesson: Lesson, refuse: Refuse): Pick<Report, "grades" | "grade"> {
  const grades = checkText(lesson, refuse);
  const grade = readingGrade(lesson.steps.flatMap(familyTexts).join("\n"));
  checkWhole(grade, lesson.language, refuse);
  if (lesson.translation?.outOfDate)
    refuse(1, "words of an earlier source", `of: ${lesson.version}, once they say what the source says now`);
  return { grades, grade };
}

/** Middle of the steps' grades (Flesch-Kincaid). */
export function medianGrade(grades: readonly ReadingGrade[]): number {
  const sorted = grades.map(({ fleschKincaid }) => fleschKincaid).sort((a, b) => a - b);
  return sorted[Math.floor(sorted.length / 2)] ?? Number.NaN;
}

/** Part by which the minutes of a lesson may miss what its steps take. */
const MINUTES_OFF = 0.2;

function checkMinutes(lesson: Lesson, refuse: Refuse): void {
  const taken = minutesOf(lesson);
  if (Math.abs(lesson.minutes - taken) > MINUTES_OFF * taken)
    refuse(1, `minutes: ${lesson.minutes}`, `about ${Math.round(taken)}: what its steps take`);
}

/** A lesson ends with a problem; a number to type has three mistakes with a name. */
function checkProblems({ steps }: Lesson, refuse: Refuse): void {
  const last = steps.at(-1);
  if (last && !last.question)
    refuse(last.line, `last step "${last.id}" without a question`, "one problem at the end");
  for (const { question } of steps)
    if (question?.kind === "number" && question.mistakes.length < 3)
      refuse(question.line, `${question.mistakes.length} mistakes`, "at least 3 with a name");
}

/** Requirements on the kit's own lessons as a course, beyond those on a single lesson. */
export function checkCourse(lesson: Lesson, report: Report): readonly Fault[] {
  const { refuse, faults } = refuseIn(lesson.file);
  const median = medianGrade(report.grades);
  if (lesson.language === "en") {
    if (median > 6) refuse(1, `median reading grade ${median.toFixed(1)}`, "at most 6 (Flesch-Kincaid)");
    if (report.grade.smog > 9) refuse(1, `SMOG ${report.grade.smog.toFixed(1)}`, "at most 9");
  }
  if (lesson.steps.length < 8) refuse(1, `${lesson.steps.length} steps`, "at least 8");
  if (lesson.recall.length < 3) refuse(1, `${lesson.recall.length} questions to recall`, "at least 3");
  if (lesson.number > 1 && !lesson.recall.some((each) => each.lesson !== null && each.lesson !== lesson.id)) {
    refuse(1, "no question from an earlier lesson", "recall: lesson#step");
  }
  if (lesson.language === "en") {
    checkMinutes(lesson, refuse);
    checkProblems(lesson, refuse);
    if (!lesson.goals) refuse(1, "no goals", "goals: plain and technical, what a reader can do afterwards");
  }
  const questions = lesson.steps.flatMap(({ question }) => question ?? []);
  if (!questions.some(({ kind }) => kind === "predict"))
    refuse(1, "no prediction", "a question of kind predict");
  // Peer instruction: three or four answers to talk over.
  if (!questions.some((each) => each.room && "answers" in each && each.answers.length >= 3))
    refuse(1, "no question for the room", "room: true on a question with 3 answers or more");
  if (!lesson.tell) refuse(1, "no prompt to tell a friend", "tell");
  for (const step of lesson.steps) {
    if (!step.technical) refuse(step.line, `step "${step.id}" without a technical version`, "### technical");
    if (!step.notes) refuse(step.line, `step "${step.id}" without speaker notes`, "### notes");
    else if (step.notes.language !== lesson.language)
      refuse(step.line, `step "${step.id}" with speaker notes in ${step.notes.language}`, lesson.language);
  }
  if (!lesson.steps.some(({ caution }) => caution)) refuse(1, "no caution", "### caution where it bites");
  // A lecture shows only questions for the room.
  let unasked = 0;
  for (const step of lesson.steps) {
    unasked = step.question?.room ? 0 : unasked + 1;
    if (unasked === 5)
      refuse(step.line, "more than 4 steps of a lecture without a question", "room: true on a question");
  }
  return faults;
}
