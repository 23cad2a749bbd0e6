import { expect, test } from "vitest";
import { fieldOfFault } from "../../../src/lesson/edit/field-of-fault.ts";
import { outlineOf } from "../../../src/lesson/edit/text-outline.ts";
import { readLesson } from "../../../src/lesson/read/read.ts";

const LESSON = `---
id: mine
number: 90
title: Two widths
reader: parents
aim: see it
remember: Narrow costs.
minutes: 3
---

## Wide {#wide}

\`\`\`scene
stage: extracardiac
set: { conduitDiameter: 18 }
\`\`\`

\`\`\`question
kind: choose
ask: Why?
answers:
  a: { say: A, because: So., right: true }
  b:
    say: B
    because: Not so.
\`\`\`

### plain
It is wide.

More of it.

### notes
Say it slowly.
`;

test.each<[string, [string, string], string]>([
  ["a key with a wrong value", ["minutes: 3", "minutes: 300"], "-1 front.minutes"],
  ["a key that is missing", ["remember: Narrow costs.\n", ""], "-1 front.remember"],
  ["a parameter out of range", ["conduitDiameter: 18", "conduitDiameter: 80"], "0 scene.set.conduitDiameter"],
  ["an unknown stage", ["stage: extracardiac", "stage: x"], "0 scene.stage"],
  ["an empty answer in braces", ["say: A", 'say: ""'], "0 question.answers.a.say"],
  ["an empty answer on a line", ["say: B", 'say: ""'], "0 question.answers.b.say"],
  ["an answer without a reason", ["    because: Not so.\n", ""], "0 question.answers.b.because"],
  ["an empty question", ["ask: Why?", 'ask: ""'], "0 question.ask"],
  ["a wrong mark in what is said", ["It is wide.", "It is {{ wide }}."], "0 said"],
  ["a wrong mark further down", ["More of it.", "More of {{ it }}."], "0 more"],
  ["a wrong mark in the notes", ["Say it slowly.", "Say {{ it }}."], "0 notes"],
  ["a step's id", ["{#wide}", "{#Wide!}"], "0 id"],
])("%s is shown at its field", (_, [from, to], expected) => {
  const text = LESSON.replace(from, to);
  expect(text).not.toBe(LESSON);
  const outline = outlineOf(text);
  const places = readLesson(text, "mine.md").faults.map((fault) => fieldOfFault(outline, fault));
  expect(places.map(({ step, field }) => `${step} ${field}`)).toEqual([expected]);
});
