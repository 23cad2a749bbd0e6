import { describe, expect, test } from "vitest";
import { checkLesson } from "../../../src/lesson/check/check.ts";
import { rememberAnswers } from "../../../src/lesson/check/check-model.ts";
import { RIGHT_NUMBER } from "../../../src/lesson/judge/judge-number.ts";
import { judge } from "../../../src/lesson/judge/questions.ts";
import type { Lesson, NumberQuestion } from "../../../src/lesson/lesson.ts";
import { situationOf, statesOfQuestion } from "../../../src/lesson/model/situation.ts";
import { play, startPlayer } from "../../../src/lesson/player.ts";
import { inlinesOf, wordsOf } from "../../../src/lesson/prose.ts";
import { readLesson } from "../../../src/lesson/read/read.ts";
import { readTranslation } from "../../../src/lesson/read/read-translation.ts";
import { solve } from "../../../src/sim/circulation/solve.ts";
import { frontOf } from "../front.ts";

const answer = rememberAnswers(solve);
const LIBRARY = { glossary: {}, sources: {}, lessons: [] };

const QUESTION = {
  value: "2.222 * pathway.pressureDrop * flows.pulmonary",
  unit: "mW 2",
  within: "5 %",
  forgot: "pathway.pressureDrop * flows.pulmonary",
  mistakes: "",
  last: "2.222 * pathway.pressureDrop * flows.pulmonary | mW 2",
};
const lessonOf = (changed: Partial<typeof QUESTION> = {}) => {
  const { value, unit, within, forgot, mistakes, last } = { ...QUESTION, ...changed };
  return `${frontOf({ reader: "students" })}
## One {#one}

\`\`\`question
kind: number
ask: What power is that?
value: ${value}
unit: ${unit}
within: ${within}
mistakes:
  unit:
    say: Units not converted
    value: ${forgot}
    because: A pressure in mmHg times a flow in litres a minute is no power yet.
${mistakes}
right: Pressure times flow is power.
wrong: Multiply the drop by the flow, then convert.
solution:
  - Take the drop times the flow, $P = \\Delta p\\,Q$.
  - "In milliwatts: {{ ${last} }}."
\`\`\`

### plain
Blood flows.
`;
};
const read = (text: string): Lesson => {
  const { value, faults } = readLesson(text, "a.md");
  if (!value) throw new Error(faults.map(({ path, found }) => `${path} ${found}`).join("\n"));
  return value;
};
const found = (changed: Partial<typeof QUESTION>) =>
  checkLesson(read(lessonOf(changed)), LIBRARY, answer)
    .faults.map(({ found: each, allowed }) => `${each}; ${allowed}`)
    .join("\n");

describe("judging a typed number", () => {
  const lesson = read(lessonOf());
  const question = lesson.steps[0]!.question as NumberQuestion;
  const situation = situationOf(statesOfQuestion(lesson, 0), answer);
  const { pathway, flows } = answer(situation.own.request);
  const truth = 2.222 * pathway.pressureDrop * flows.pulmonary;

  test("within the tolerance it is right; both edges count, what is beyond does not", () => {
    for (const part of [1, 0.951, 1.049]) expect(judge(question, part * truth, situation)!.right).toBe(true);
    for (const part of [0.94, 1.06]) {
      const judgement = judge(question, part * truth, situation)!;
      expect(judgement.right).toBe(false);
      expect(wordsOf(judgement.because)).toMatch(/then convert/);
    }
  });

  test("whoever rounds to the decimals shown is right, however narrow the tolerance", () => {
    const narrow = read(lessonOf({ within: "0" })).steps[0]!.question as NumberQuestion;
    const rounded = Number(truth.toFixed(2));
    expect(rounded).not.toBe(truth);
    expect(judge(narrow, rounded, situation)!.right).toBe(true);
    expect(judge(narrow, rounded + 0.02, situation)!.right).toBe(false);
  });

  test("a number that a named mistake leads to gets that mistake's reason", () => {
    const judgement = judge(question, (1.02 * truth) / 2.222, situation)!;
    expect(judgement.mistake?.id).toBe("unit");
    expect(wordsOf(judgement.because)).toMatch(/no power yet/);
  });

  test("where nothing is typed the right number and the mistakes can be pointed at", () => {
    expect(judge(question, RIGHT_NUMBER, situation)!.right).toBe(true);
    expect(judge(question, "unit", situation)!.mistake?.id).toBe("unit");
    expect(judge(question, "other", situation)).toBeNull();
  });

  test("the first try is kept with the model's number and the mistake", () => {
    const judgement = judge(question, truth / 2.222, situation)!;
    const player = play(lesson, startPlayer(lesson, true), {
      kind: "answer",
      given: truth / 2.222,
      judgement,
      day: "2026-11-29",
    });
    const { typed, right } = player.answers.one!;
    expect(right).toBe(false);
    expect(typed!.truth).toBeCloseTo(truth, 9);
    expect(typed!.within).toBeCloseTo(0.05 * truth, 6);
    expect(typed!.mistake).toBe("unit");
  });
});

describe("the checker", () => {
  test("passes a number whose mistake lies apart and whose solution ends with it", () => {
    expect(found({})).toBe("");
  });
  test("refuses a mistake within the tolerance of the right number", () => {
    expect(found({ forgot: "2.3 * pathway.pressureDrop * flows.pulmonary" })).toMatch(
      /value .* and mistake "unit" .*further apart than their tolerances/,
    );
  });
  test("refuses two mistakes that one number would show", () => {
    const mistakes =
      "  twice:\n    say: Twice\n    value: 1.04 * pathway.pressureDrop * flows.pulmonary\n    because: Once is enough here.";
    expect(found({ mistakes })).toMatch(/mistake "unit" .* and mistake "twice"/);
  });
  test("refuses a value that the model has not", () => {
    expect(found({ value: "extras.nothing" })).toMatch(/no value for value/);
  });
  test("refuses a solution that ends with another number or unit", () => {
    expect(found({ last: "pathway.powerLoss | mW 2" })).toMatch(/a solution that ends with/);
    expect(found({ last: "pathway.pressureDrop | mmHg 2" })).toMatch(/ends in mmHg; one that ends in mW/);
  });
  test("reads a square root", () => {
    const root = "sqrt(pathway.pressureDrop) + 10";
    expect(found({ value: root, last: `${root} | mW 2` })).toBe("");
  });
});

test("a translation changes the words of a number's question, never its value or its mistakes' values", () => {
  const source = read(lessonOf());
  const translated = (mistake: string) => `---
id: a-lesson
language: de
of: ${source.version}
title: T
reader: Studierende
aim: es zu sehen
remember: Es kostet.
translator: machine
date: 2026-11-29
reviewed: false
---

## Eins {#one}

\`\`\`question
ask: Welche Leistung ist das?
mistakes:
  ${mistake}: { say: Nicht umgerechnet, because: Das ist noch keine Leistung. }
right: Druck mal Fluss.
wrong: Erst malnehmen.
solution:
  - Abfall mal Fluss.
  - "In Milliwatt: {{ ${QUESTION.last} }}."
\`\`\`

### plain
Blut strömt.
`;
  const { value } = readTranslation(translated("unit"), "de.md", source);
  const question = value!.steps[0]!.question as NumberQuestion;
  expect(wordsOf(question.mistakes[0]!.say)).toBe("Nicht umgerechnet");
  const original = source.steps[0]!.question as NumberQuestion;
  expect(question.value).toEqual(original.value);
  expect(question.mistakes[0]!.value).toEqual(original.mistakes[0]!.value);
  expect([...inlinesOf(question.solution[1]!)].some(({ kind }) => kind === "figure")).toBe(true);
  const { faults } = readTranslation(translated("units"), "de.md", source);
  expect(faults.map(({ allowed }) => allowed).join()).toMatch(/the source's keys: unit/);
});
