import { expect, it } from "vitest";
import { readLessonFiles } from "../../src/cli/lesson-files.ts";
import { findStep } from "../../src/lesson/lesson.ts";
import { picturedSteps } from "../../src/modes/shared/lesson-handout.tsx";

it("a lesson's page for families shows four steps in their order: the first, then what answers its predictions", () => {
  for (const lesson of readLessonFiles("lessons").lessons.en!) {
    const steps = picturedSteps(lesson);
    expect(steps).toHaveLength(4);
    expect(steps[0]).toBe(0);
    expect([...steps].sort((a, b) => a - b)).toEqual(steps);
    const reveals = lesson.steps.flatMap(({ question }) =>
      question?.kind === "predict" ? [findStep(lesson, question.reveal)] : [],
    );
    expect(reveals.slice(0, 3).every((index) => steps.includes(index))).toBe(true);
  }
});
