import { expect, test } from "vitest";
import { readLessonFiles } from "../../../src/cli/lesson-files.ts";
import { drawQuiz, nextRound, QUIZ_LENGTH, quizAnswered, quizOf } from "../../../src/lesson/judge/quiz.ts";
import { NO_PROGRESS, readProgress, writeProgress } from "../../../src/lesson/progress/progress.ts";

const lessons = readLessonFiles("lessons").lessons.en!;
const lessonOf = (key: string) => key.split("#")[0]!;

test("the quiz draws 30 questions, none twice, none that needs a control", () => {
  const keys = drawQuiz(lessons, 7, 1);
  expect(keys).toHaveLength(QUIZ_LENGTH);
  expect(new Set(keys).size).toBe(QUIZ_LENGTH);
  for (const key of keys) {
    const lesson = lessons.find(({ id }) => id === lessonOf(key))!;
    const question = lesson.steps.find(({ id }) => `${lesson.id}#${id}` === key)!.question!;
    expect(question.kind).not.toBe("goal");
  }
});

test("every lesson has its part: no two differ by more than one question", () => {
  for (let reader = 0; reader < 20; reader++) {
    const keys = drawQuiz(lessons, reader, 1);
    const parts = lessons.map(({ id }) => keys.filter((key) => lessonOf(key) === id).length);
    expect(Math.max(...parts) - Math.min(...parts)).toBeLessThanOrEqual(1);
  }
});

test("a reader sees the same questions again; another reader, or another round, sees others", () => {
  expect(drawQuiz(lessons, 7, 1)).toEqual(drawQuiz(lessons, 7, 1));
  expect(drawQuiz(lessons, 8, 1)).not.toEqual(drawQuiz(lessons, 7, 1));
  expect(drawQuiz(lessons, 7, 2)).not.toEqual(drawQuiz(lessons, 7, 1));
});

test("few lessons give as many questions as they have", () => {
  const [first] = lessons;
  const own = first!.steps.filter(({ question }) => question && question.kind !== "goal").length;
  expect(drawQuiz([first!], 1, 1)).toHaveLength(own);
});

test("one try for each question; the last one puts the result into the record, which can be read back", () => {
  const keys = ["a#one", "a#two", "b#one"];
  let progress = NO_PROGRESS;
  const give = (key: string, right: boolean) => {
    progress = quizAnswered(progress, keys, { key, right, day: "2026-11-29" });
  };
  give("a#one", false);
  give("a#one", true);
  give("c#other", true);
  give("a#two", true);
  expect(quizOf(progress).results).toEqual([]);
  give("b#one", true);
  expect(quizOf(progress).results).toEqual([{ day: "2026-11-29", right: 2, asked: 3 }]);
  expect(readProgress(writeProgress(progress))).toEqual(progress);
  const next = quizOf(nextRound(progress));
  expect(next).toMatchObject({ round: 2, given: {} });
  expect(next.results).toHaveLength(1);
});
