import { describe, expect, test } from "vitest";
import { readLessonFiles, SOURCE_LANGUAGE } from "../../src/cli/lesson-files.ts";
import { checkCourse, checkLesson, medianGrade } from "../../src/lesson/check/check.ts";
import { rememberAnswers } from "../../src/lesson/check/check-model.ts";
import { checkPage } from "../../src/lesson/check/check-text.ts";
import { stepState } from "../../src/lesson/model/states.ts";
import { countWords, inlinesOf, wordsOf } from "../../src/lesson/prose.ts";
import { refuseIn } from "../../src/lesson/read/read.ts";
import { solve } from "../../src/sim/circulation/solve.ts";
import { describeFault } from "../../src/sim/faults.ts";
import { readAddress, writeAddress } from "../../src/state/address.ts";
import { disagreements } from "./plate-words.ts";

const lessonFiles = readLessonFiles("lessons");
const answer = rememberAnswers(solve);
const lessons = Object.entries(lessonFiles.lessons).flatMap(([language, each]) =>
  each.map((lesson) => ({ language, lesson })),
);
const library = (language: string) => ({
  glossary: lessonFiles.glossaries[language]!,
  sources: lessonFiles.sources,
  lessons: lessonFiles.lessons[language]!,
});

test("every lesson, glossary and list of sources is read without a fault", () => {
  expect(lessonFiles.faults.map(describeFault)).toEqual([]);
});

const pages = Object.entries(lessonFiles.pages).flatMap(([language, each]) =>
  Object.entries(each).map(([name, page]) => ({ language, name, page })),
);

test.each(pages)("$language $name reads easily in its plain section", ({ page }) => {
  const { refuse, faults } = refuseIn(page.title);
  checkPage(page, refuse);
  expect(faults.map(describeFault)).toEqual([]);
});

test("every lesson and page that is a translation says who made it, when, and whether a clinician has read it", () => {
  const translated = [...pages.map(({ page }) => page), ...lessons.map(({ lesson }) => lesson)].filter(
    ({ language }) => language !== SOURCE_LANGUAGE,
  );
  // A lesson may wait for its translation: its readers get the English with a note.
  const wanted = lessonFiles.lessons[SOURCE_LANGUAGE]!.length + 2;
  expect(translated.length + lessonFiles.untranslated.length).toBe(
    (Object.keys(lessonFiles.lessons).length - 1) * wanted,
  );
  for (const { translation } of translated) {
    // Machine-made until a person's name stands there.
    expect(translation!.translator).toMatch(/^machine$|^\p{Lu}\S+ \S/u);
    expect(translation!.date).toMatch(/^20\d\d-[01]\d-[0-3]\d$/);
    expect(translation!.outOfDate).toBe(false);
  }
});

test("the calculation of the course is shown in full, then with a gap, then left to the reader", () => {
  const energy = lessonFiles.lessons[SOURCE_LANGUAGE]!.find(({ id }) => id === "04-energy-loss")!;
  const reported = energy.steps.map(
    ({ technical, task }) => `${technical ? wordsOf(technical.prose) : ""} ${task ? wordsOf(task.ask) : ""}`,
  );
  const at = ["Worked:", "With a gap:", "Alone now:"].map((mark) =>
    reported.findIndex((text) => text.includes(mark)),
  );
  expect(at[0]).toBeGreaterThanOrEqual(0);
  expect([...at].sort((a, b) => a - b)).toEqual(at);
});

test("each task to be written has a model answer with the model's numbers or its reasons, and there are four", () => {
  const tasks = lessonFiles.lessons[SOURCE_LANGUAGE]!.flatMap(({ steps }) =>
    steps.flatMap(({ task }) => task ?? []),
  );
  expect(tasks.length).toBeGreaterThanOrEqual(4);
  for (const { answer: lines } of tasks)
    expect(countWords(lines.map((line) => wordsOf(line)).join(" "))).toBeGreaterThanOrEqual(15);
});

test("goals stand at both levels, in each language that has the lesson, and none twice", () => {
  for (const { lesson } of lessons) {
    const goals = Object.values(lesson.goals!).flat();
    expect(goals.length, lesson.file).toBeGreaterThanOrEqual(4);
    expect(new Set(goals).size, lesson.file).toBe(goals.length);
  }
});

test("the lessons are there, in order", () => {
  const numbers = lessonFiles.lessons[SOURCE_LANGUAGE]!.map(({ number }) => number);
  expect(numbers.slice(0, 10)).toEqual([1, 2, 3, 4, 5, 6, 7, 8, 9, 10]);
  expect(numbers).toContain(15);
  expect(numbers).toEqual([...numbers].sort((a, b) => a - b));
});

test("the glossary explains 60 terms or more", () => {
  expect(Object.keys(lessonFiles.glossaries[SOURCE_LANGUAGE]!).length).toBeGreaterThanOrEqual(60);
});

describe.each(lessons)("$language $lesson.id", ({ language, lesson }) => {
  const report = checkLesson(lesson, library(language), language === SOURCE_LANGUAGE ? answer : null);

  test("every step solves, every number is there, every claim holds by the model, every question has its answer", () => {
    expect(report.faults.map(describeFault)).toEqual([]);
  });

  // A translation repeats the figures.
  test.runIf(language === SOURCE_LANGUAGE)(
    "its words give a number as the plate of the same thing in the picture does, with no fewer decimals",
    () => {
      const { compared, found } = disagreements(lesson, answer);
      expect(found).toEqual([]);
      expect(compared).toBeGreaterThan(2);
    },
  );

  test("U11 U23 U25 it meets the bars of the course: grade, amount, recall, questions, notes, cautions", () => {
    expect(checkCourse(lesson, report).map(describeFault)).toEqual([]);
  });

  test("U11 U23 it names its readers, what they can say afterwards, and one short thing to remember, none of it another lesson's", () => {
    // Families and students in the four languages.
    expect(lesson.reader).toMatch(/famil/i);
    expect(lesson.reader).toMatch(/[sé]tud/i);
    const others = lessonFiles.lessons[language]!.filter(({ id }) => id !== lesson.id);
    for (const key of ["aim", "remember"] as const) {
      expect(countWords(lesson[key]), key).toBeGreaterThanOrEqual(8);
      expect(countWords(lesson[key]), key).toBeLessThanOrEqual(30);
      expect(
        others.map((each) => each[key]),
        key,
      ).not.toContain(lesson[key]);
    }
    expect(lesson.remember).toMatch(/^\p{Lu}.*\.$/u);
    expect(lesson.remember.match(/\./g)!.length).toBeLessThanOrEqual(2);
  });

  test.runIf(language === SOURCE_LANGUAGE)(
    "U11 plain words: median grade at most 6, no step over 8 (Kincaid et al. 1975), SMOG at most 9 (McLaughlin 1969)",
    () => {
      expect(medianGrade(report.grades)).toBeLessThanOrEqual(6);
      expect(Math.max(...report.grades.map(({ fleschKincaid }) => fleschKincaid))).toBeLessThanOrEqual(8);
      expect(report.grade.smog).toBeLessThanOrEqual(9);
    },
  );

  test("U26 each answer, right or wrong, has its own reason, which says more than right or wrong", () => {
    for (const { question } of lesson.steps) {
      if (question?.kind !== "predict" && question?.kind !== "choose") continue;
      const reasons = question.answers.map(({ because }) =>
        because.map((node) => ("text" in node ? node.text : "")).join(""),
      );
      expect(new Set(reasons).size).toBe(reasons.length);
      for (const reason of reasons) expect(reason.split(/\s+/).length).toBeGreaterThanOrEqual(5);
    }
  });

  test("U24 what a learner is asked to predict is run in a later step", () => {
    const asked = lesson.steps.flatMap(({ question }, index) =>
      question?.kind === "predict" ? [{ question, index }] : [],
    );
    expect(asked.length).toBeGreaterThan(0);
    for (const { question, index } of asked) {
      const reveal = lesson.steps.findIndex(({ id }) => id === question.reveal);
      expect(reveal).toBeGreaterThan(index);
      expect(JSON.stringify(stepState(lesson, reveal))).not.toBe(JSON.stringify(stepState(lesson, index)));
    }
  });

  test("every step's scene goes through the short text of a link and back", () => {
    for (let index = 0; index < lesson.steps.length; index++) {
      const state = stepState(lesson, index);
      const { state: back, dropped } = readAddress(writeAddress(state));
      expect(dropped).toEqual([]);
      expect(back.request).toEqual(state.request);
      expect(back.beside).toEqual(state.beside);
    }
  });
});

test("most steps that show numbers mark what they say of the model as a claim", () => {
  const steps = lessonFiles.lessons[SOURCE_LANGUAGE]!.flatMap(({ steps: each }) => each);
  const marked = steps.filter((step) =>
    [step.plain, step.technical].some(
      (part) => part && [...inlinesOf(part.prose)].some(({ kind }) => kind === "claim"),
    ),
  );
  expect(marked.length / steps.length).toBeGreaterThan(0.5);
});
