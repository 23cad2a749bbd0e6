import { expect, test } from "vitest";
import { checkCourse, checkLesson } from "../../../src/lesson/check/check.ts";
import { minutesOf } from "../../../src/lesson/library/minutes.ts";
import { play, progressOf, startPlayer } from "../../../src/lesson/player.ts";
import { wordsOf } from "../../../src/lesson/prose.ts";
import { readLesson } from "../../../src/lesson/read/read.ts";
import { frontOf } from "../front.ts";

const lessonOf = (minutes: number, task: string, plain = "Blood flows.") => `${frontOf({ minutes })}
## One {#one}

\`\`\`task
${task}
\`\`\`

### plain
${plain}
`;
const TASK = 'ask: Why is that?\nanswer:\n  - "At {{ pathway.pressureDrop | mmHg 1 }} it is so."';
const read = (text: string) => readLesson(text, "a.md");

test("a task has its question and its model answer, with live numbers", () => {
  const { task } = read(lessonOf(3, TASK)).value!.steps[0]!;
  expect(wordsOf(task!.ask)).toBe("Why is that?");
  expect(wordsOf(task!.answer[0]!)).toMatch(/^At 12 it is so/);
});

test("a task without an answer, or with a number that the model has not, is refused with its line", () => {
  expect(read(lessonOf(3, "ask: Why is that?")).faults.map(({ path }) => path)).toEqual(["a.md:14"]);
  const unknown = read(lessonOf(3, 'ask: Why?\nanswer: ["{{ pressures.nowhere | mmHg 1 }}"]'));
  expect(unknown.faults[0]!.found).toBe("pressures.nowhere");
});

test("what is written for a task is kept by step, and comes back at the next visit", () => {
  const lesson = read(lessonOf(3, TASK)).value!;
  const player = play(lesson, startPlayer(lesson, true), {
    kind: "write",
    step: "one",
    text: "Since it is.",
  });
  const kept = progressOf(lesson, player);
  expect(kept.written).toEqual({ one: "Since it is." });
  expect(startPlayer(lesson, true, kept).written).toEqual({ one: "Since it is." });
});

test("minutes must be what the steps take, a fifth off at most", () => {
  const lesson = (minutes: number) => read(lessonOf(minutes, TASK, "We go on and see. ".repeat(120))).value!;
  const taken = minutesOf(lesson(1));
  // 480 words of text and a few of the task at 120 a minute, the task itself two minutes, a look at the picture.
  expect(taken).toBeCloseTo((5 * 120) / 120 + 2 + 20 / 60, 0);
  const fault = (minutes: number) => {
    const found = lesson(minutes);
    const library = { glossary: {}, sources: {}, lessons: [] };
    const report = checkLesson(found, library, null);
    return checkCourse(found, report).some(({ found: each }) => each.startsWith("minutes:"));
  };
  expect(fault(Math.round(taken))).toBe(false);
  expect(fault(Math.round(1.5 * taken))).toBe(true);
  expect(fault(Math.round(0.6 * taken))).toBe(true);
});
