import { describe, expect, it } from "vitest";
import { readLessonFiles } from "../../../../src/cli/lesson-files.ts";
import { hasMessage } from "../../../../src/i18n/index.ts";
import { findStep, type Lesson } from "../../../../src/lesson/lesson.ts";
import { stepState } from "../../../../src/lesson/model/states.ts";
import { figuresThatMatter } from "../../../../src/modes/shared/lesson/figures-that-matter.ts";
import { solve } from "../../../../src/sim/circulation/solve.ts";
import { paneRequest } from "../../../../src/state/scene-state.ts";

const lessons = readLessonFiles("lessons").lessons.en!;
const shown = (lesson: Lesson, index: number) =>
  figuresThatMatter(lesson.steps[index]!, stepState(lesson, index), []);
const namesOf = (id: string, step: string) => {
  const lesson = lessons.find((each) => each.id.startsWith(id))!;
  return shown(lesson, findStep(lesson, step)).map(({ name }) => name);
};

describe("the large figures of a step", () => {
  it("are two in each step of each lesson, one side by side, each with a name in words", () => {
    for (const lesson of lessons) {
      for (const [index] of lesson.steps.entries()) {
        const figures = shown(lesson, index);
        const panes = stepState(lesson, index).beside.length + 1;
        expect(figures).toHaveLength(panes > 1 ? 1 : 2);
        for (const { name, values } of figures) {
          expect(hasMessage(`figure.${name}`)).toBe(true);
          expect(values).toHaveLength(panes);
        }
      }
    }
  });

  it("never speak of a pathway before there is one", () => {
    for (const lesson of lessons) {
      for (const [index] of lesson.steps.entries()) {
        const { request, beside } = stepState(lesson, index);
        const stages = [request.stage, ...beside.map(({ stage }) => stage ?? request.stage)];
        if (!stages.some((stage) => ["two-ventricle", "glenn"].includes(stage))) continue;
        for (const { name } of shown(lesson, index))
          expect(["pressureDrop", "powerLoss", "pathwayPressure", "fenestrationFlow"]).not.toContain(name);
      }
    }
  });

  it("are the step's own where its words name a number", () => {
    expect(namesOf("01", "how-hard")).toEqual(["aortaPressure", "mainPulmonaryArteryPressure"]);
    expect(namesOf("04", "flow")).toEqual(["lungFlow", "powerLoss"]);
    expect(namesOf("06", "price")).toEqual(["arterialSaturation", "pathwayPressure"]);
  });

  it("wait while the answer is still that of another stage", () => {
    const lesson = lessons[0]!;
    const index = findStep(lesson, "cost");
    const state = stepState(lesson, index);
    const answers = [0, 1].map((pane) => solve(paneRequest(state, pane)));
    const [known] = figuresThatMatter(lesson.steps[index]!, state, answers);
    expect(known!.values).toEqual(answers.map(({ pressures }) => pressures.hepaticVein));
    const [waiting] = figuresThatMatter(lesson.steps[index]!, state, [answers[1]!, answers[1]!]);
    expect(waiting!.values).toEqual([null, answers[1]!.pressures.hepaticVein]);
  });
});
