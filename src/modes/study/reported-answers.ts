/** What a learner answered in this visit, as a course system takes it: the question in words, what was chosen, what is right. */
import { findStep, type Lesson, type Question } from "../../lesson/lesson.ts";
import type { Attempt, Progress } from "../../lesson/progress/progress.ts";
import { wordsOf } from "../../lesson/prose.ts";
import type { ReportedAnswer } from "../../lms/record-adapter.ts";
import { entryAt } from "../../sim/checked/present.ts";
import { answerInWords } from "./record-answers.ts";

/** Those that have been judged; `but`: what an earlier visit has reported already. */
export const reportedAnswers = (
  progress: Progress,
  but: Progress,
  lessons: readonly Lesson[],
): readonly ReportedAnswer[] =>
  lessons.flatMap((lesson) =>
    Object.entries(progress.lessons[lesson.id]?.answers ?? {}).flatMap(([step, attempt]) => {
      const earlier = but.lessons[lesson.id]?.answers[step];
      const index = findStep(lesson, step);
      if (index < 0 || attempt.right === null || (earlier && earlier.right !== null)) return [];
      return reported(lesson, index, attempt, attempt.right);
    }),
  );

function reported(lesson: Lesson, index: number, attempt: Attempt, right: boolean): ReportedAnswer[] {
  const { id: step, question } = entryAt(lesson.steps, index);
  if (!question) return [];
  const { given } = attempt;
  // What the model would have to compute anew is not worth the wait: its place shows as "…".
  const { asked } = answerInWords(lesson, index, attempt, () => null);
  const kind = kindOf(question);
  const fits =
    kind === "numeric"
      ? typeof given === "number"
      : kind === "choice"
        ? typeof given === "string"
        : Array.isArray(given);
  if (!fits) return [];
  const words = { asked, language: lesson.language, options: optionsOf(question) };
  return [{ lesson: lesson.id, step, kind, ...words, given, correct: correctOf(kind, attempt), right }];
}

const kindOf = (question: Question): ReportedAnswer["kind"] =>
  "answers" in question ? "choice" : question.kind === "order" ? "sequencing" : "numeric";

function optionsOf(question: Question): ReportedAnswer["options"] {
  const options = "answers" in question ? question.answers : "items" in question ? question.items : [];
  return options.map(({ id, say }) => ({ id, say: wordsOf(say, () => "…") }));
}

function correctOf(
  kind: ReportedAnswer["kind"],
  { given, right, truth, typed }: Attempt,
): ReportedAnswer["correct"] {
  if (typed) return { low: typed.truth - typed.within, high: typed.truth + typed.within };
  if (kind === "numeric") return null;
  if (right && typeof given !== "number") return given;
  return truth ?? null;
}
