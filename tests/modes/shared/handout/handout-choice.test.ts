import { describe, expect, it } from "vitest";
import { readLessonFiles } from "../../../../src/cli/lesson-files.ts";
import { findStep } from "../../../../src/lesson/lesson.ts";
import {
  choiceOf,
  chosenSteps,
  firstChoice,
  isWide,
  withAllSteps,
  withOne,
} from "../../../../src/modes/shared/handout/handout-choice.ts";

const { lessons } = readLessonFiles("lessons");
const lesson = lessons.en![0]!;
const id = (index: number) => lesson.steps[index]!.id;

describe("a lesson's page for families", () => {
  it("begins with what fills two rows, in the lesson's order, with pictures: the first step, then what answers its predictions", () => {
    for (const lesson of lessons.en!) {
      const chosen = chosenSteps(lesson, firstChoice(lesson));
      const steps = chosen.map(({ index }) => index);
      const taken = steps.map((index) => (isWide(lesson, index) ? 2 : 1));
      expect(taken.reduce((sum, each) => sum + each, 0)).toBe(4);
      expect(chosen.every(({ pictured }) => pictured)).toBe(true);
      expect(steps[0]).toBe(0);
      expect([...steps].sort((a, b) => a - b)).toEqual(steps);
      const reveals = lesson.steps.flatMap(({ question }) =>
        question?.kind === "predict" ? [findStep(lesson, question.reveal)] : [],
      );
      const fitting = 3 - (taken.includes(2) ? 1 : 0);
      expect(reveals.slice(0, fitting).every((index) => steps.includes(index))).toBe(true);
    }
  });

  it("gives a whole row to a picture with curves and many words", () => {
    const tube = lessons.en!.find(({ id }) => id === "09-tube-and-growth")!;
    const wide = tube.steps.flatMap(({ id }, index) => (isWide(tube, index) ? [id] : []));
    expect(wide).toEqual(["row", "narrow", "run", "tube-run"]);
  });

  it("takes in all steps or none, always in the lesson's order", () => {
    const all = withAllSteps(firstChoice(lesson), lesson);
    expect(chosenSteps(lesson, all).map(({ index }) => index)).toEqual([...lesson.steps.keys()]);
    const last = lesson.steps.length - 1;
    const none = lesson.steps.reduce((choice, step) => withOne(choice, "steps", step.id, false), all);
    expect(chosenSteps(lesson, none)).toEqual([]);
    const two = withOne(withOne(none, "steps", id(last), true), "steps", id(1), true);
    expect(chosenSteps(lesson, two).map(({ index }) => index)).toEqual([1, last]);
  });

  it("leaves out a picture and keeps its step; a step that comes back has its picture as it was chosen", () => {
    const without = withOne(firstChoice(lesson), "pictures", id(0), false);
    expect(chosenSteps(lesson, without)[0]).toEqual({ index: 0, pictured: false });
    const gone = withOne(without, "steps", id(0), false);
    expect(chosenSteps(lesson, gone).map(({ index }) => index)).not.toContain(0);
    expect(chosenSteps(lesson, withOne(gone, "steps", id(0), true))).toEqual(chosenSteps(lesson, without));
  });

  it("is found again as it was chosen, in another language too; another lesson has its own", () => {
    const choice = choiceOf(lesson);
    choice.value = withOne(choice.value, "steps", id(0), false);
    expect(choiceOf({ ...lesson }).value).toBe(choice.value);
    const german = lessons.de!.find((each) => each.id === lesson.id)!;
    expect(choiceOf(german).value).toBe(choice.value);
    const other = lessons.en![1]!;
    expect(chosenSteps(other, choiceOf(other).value)[0]?.index).toBe(0);
    // A lesson that was rewritten meanwhile begins anew.
    const shorter = { ...lesson, steps: lesson.steps.slice(0, -1) };
    expect(choiceOf(shorter).value.steps.has(id(0))).toBe(true);
  });
});
