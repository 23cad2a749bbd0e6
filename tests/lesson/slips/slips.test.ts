/** What a first-time author gets wrong: each slip one fault, at its line, in plain words; where it is plain, one touch fixes it. Long because it is one table. */
import { expect, test } from "vitest";
import { checkDraft, readDraft } from "../../../src/lesson/check/draft-check.ts";
import { plainFix } from "../../../src/modes/author/plain-fix.ts";
import { solve } from "../../../src/sim/circulation/solve.ts";
import type { Fault } from "../../../src/sim/faults.ts";

const LESSON = `---
id: my-lesson
number: 90
title: One tube, two widths
reader: parents before an operation
aim: see why a narrow place costs pressure
remember: Narrow places cost pressure.
minutes: 3
---

## A wide tube {#wide}

\`\`\`scene
stage: extracardiac
set: { conduitDiameter: 18 }
\`\`\`

### plain
Blood from the legs flows up this tube. Its pressure falls by {{ pathway.pressureDrop | mmHg 2 }}.

## What happens? {#ask}

\`\`\`question
kind: choose
ask: What costs more pressure?
answers:
  narrow:
    say: A narrow tube
    right: true
    because: The same blood must squeeze through.
  wide:
    say: A wide tube
    because: There is room in it.
\`\`\`

### plain
Think of a garden hose.

## A narrow tube {#narrow}

\`\`\`scene
set: { conduitDiameter: 12 }
\`\`\`

\`\`\`question
kind: goal
ask: Bring the pressure drop below one.
control: conduitDiameter
until: pathway.pressureDrop < 0.4
reached: Wide is easy.
missed: Not yet.
\`\`\`

### plain
Now the tube is narrow. [The pressure falls further.]{claim: pathway.pressureDrop rises from previous}

- It is the same blood.
- It flows faster.
`;

const LIBRARY = {
  language: "en",
  lessons: [],
  own: new Set<string>(),
  glossary: {},
  sources: {},
  pages: {},
  faults: [],
};

function faultsOf(text: string): readonly Fault[] {
  const { value, faults } = readDraft(text, LIBRARY);
  let model: readonly Fault[] = [];
  if (value) for (const soFar of checkDraft(value, solve)) model = soFar.faults;
  return [...faults, ...model];
}

/** What the author did to the lesson; the one fault, `line | found | allowed`; the line that the fix leaves there, null where none is plain. */
type Slip = readonly [name: string, wrong: readonly [string, string], fault: string, right: string | null];

const front = LESSON.slice(0, LESSON.indexOf("## A wide"));
const RULES = "--- above and below the lesson's settings (front matter): id, number, title and so on";
const QUOTES = "the whole text in straight quotes";

const SLIPS: readonly Slip[] = [
  [
    "a colon in a title",
    ["title: One tube, two", "title: One tube: two"],
    `4 | a colon within the text of title | ${QUOTES}`,
    'title: "One tube: two widths"',
  ],
  [
    "German quotes",
    ["title: One tube, two widths", "title: „One tube: two widths“"],
    `4 | a colon within the text of title | ${QUOTES}`,
    'title: "One tube: two widths"',
  ],
  [
    "a straight quote that a word processor closed in its own way",
    ["say: A wide tube", 'say: "A wide tube”'],
    `32 | quotes around a part of say, or open ones | ${QUOTES}`,
    '    say: "A wide tube"',
  ],
  [
    "a tab",
    ["    say: A wide", "\tsay: A wide"],
    "32 | a tab at the start of the line | blanks",
    "    say: A wide tube",
  ],
  ["settings left out", [front, ""], `1 | "## A wide tube {#wide}" | ${RULES}`, null],
  [
    "settings without the rule above them",
    ["---\nid", "id"],
    `1 | settings without a line of --- above them | ${RULES}`,
    "---",
  ],
  [
    "settings without the rule below them",
    ["3\n---", "3"],
    `8 | front matter without an end | ${RULES}`,
    "minutes: 3",
  ],
  [
    "a block that is not closed",
    ["18 }\n```", "18 }"],
    '15 | a block without an end: scene begins in line 13 | a line of "```" below its last line',
    "set: { conduitDiameter: 18 }",
  ],
  [
    "an id in capitals with a blank",
    ["{#narrow}", "{#Narrow Tube}"],
    '39 | id "Narrow Tube" | {#its-id} of small letters, digits and hyphens',
    "## A narrow tube {#narrow-tube}",
  ],
  [
    "a step without an id",
    [" {#narrow}", ""],
    "39 | a step without an id | {#its-id} of small letters, digits and hyphens",
    "## A narrow tube {#a-narrow-tube}",
  ],
  [
    "two steps with one id",
    ["{#narrow}", "{#wide}"],
    '39 | id "wide" twice | an id of its own',
    "## A narrow tube {#wide-2}",
  ],
  [
    "a step without a title",
    ["## A narrow tube {", "## {"],
    "39 | a step without a title | ## Title {#narrow}",
    null,
  ],
  [
    "a step's heading with one sign",
    ["## A narrow", "# A narrow"],
    `39 | "# A narrow tube {#narrow}" | a step's heading: two # and a blank, ## Title {#its-id}`,
    "## A narrow tube {#narrow}",
  ],
  [
    "a comma in place of the point, between braces",
    ["conduitDiameter: 12 ", "conduitDiameter: 12,5 "],
    "42 | set: a comma within a number | a point",
    "set: { conduitDiameter: 12.5 }",
  ],
  [
    "a comma in place of the point",
    ["minutes: 3", "minutes: 3,5"],
    '8 | minutes: "3,5" | a number with a point in place of the comma',
    "minutes: 3.5",
  ],
  [
    "a unit behind a number",
    ["conduitDiameter: 12 ", "conduitDiameter: 12 mm "],
    "42 | set.conduitDiameter: 12 mm | 8 to 30, a number alone, without its unit (it is in mm), or default",
    "set: { conduitDiameter: 12 }",
  ],
  [
    "a unit behind its digits",
    ["mmHg 2 }}", "2 mmHg }}"],
    "19 | 2 mmHg | the unit first, then the digits: mmHg 2",
    "Blood from the legs flows up this tube. Its pressure falls by {{ pathway.pressureDrop | mmHg 2 }}.",
  ],
  [
    "a live number in single braces",
    ["{{ pathway.pressureDrop | mmHg 2 }}", "{ pathway.pressureDrop | mmHg 2 }"],
    "19 | { pathway.pressureDrop | mmHg 2 } | a live number in two braces on each side",
    "Blood from the legs flows up this tube. Its pressure falls by {{ pathway.pressureDrop | mmHg 2 }}.",
  ],
  [
    "no right answer",
    ["    right: true\n", ""],
    "24 | no right answer | right: true below exactly one answer",
    null,
  ],
  [
    "two right answers",
    ["say: A wide tube", "say: A wide tube\n    right: true"],
    "24 | 2 right answers: narrow, wide | right: true below exactly one answer",
    null,
  ],
  ["a yes for true", ["right: true", "right: yes"], "29 | right: yes | true or false", "    right: true"],
  [
    "answers as a list",
    [
      LESSON.slice(LESSON.indexOf("  narrow:"), LESSON.indexOf("in it.") + 6),
      "  - A narrow tube\n  - A wide tube",
    ],
    "26 | answers: a list with hyphens | a key for each entry, such as  wide: { say: ..., because: ... }",
    null,
  ],
  [
    "an unknown scene",
    ["stage: extracardiac", "scene: hart"],
    '14 | scene: "hart" | pathway, circuit, breathing, calf, exchange, growth, exercise',
    null,
  ],
  [
    "an unknown person",
    ["stage: extracardiac", "preset: well-adlt"],
    '14 | preset: "well-adlt" | well-adult, typical-adult, failing-adult; nearest: well-adult',
    "preset: well-adult",
  ],
  [
    "a number out of range",
    ["conduitDiameter: 12 ", "conduitDiameter: 120 "],
    "42 | set.conduitDiameter: 120 | 8 to 30 mm, or default",
    null,
  ],
  [
    "a list with dashes of a word processor",
    ["- It is the same blood.\n- It", "– It is the same blood.\n– It"],
    '57 | a list with "–" | a hyphen and a blank at the start of each line, - so',
    "- It is the same blood.",
  ],
  [
    "a language by its name",
    ["number: 90", "language: Deutsch\nnumber: 90"],
    '3 | language: "Deutsch" | a language tag (BCP 47) such as de, es, fr, pt-BR',
    "language: de",
  ],
  [
    "a goal that nothing reaches",
    ["< 0.4", "< 0.001"],
    "46 | no conduitDiameter reaches it | a condition that a value from 8 to 30 mm meets",
    null,
  ],
  [
    "a claim the wrong way round",
    ["rises from", "falls from"],
    '55 | "pathway.pressureDrop falls from previous" does not hold (0.36, then 0.52) | what the model does',
    "Now the tube is narrow. [The pressure falls further.]{claim: pathway.pressureDrop rises from previous}",
  ],
  [
    "a sign that begins a comment",
    ["title: One tube, two widths", "title: Tube #1"],
    `4 | title: all behind # is left out | ${QUOTES}; a comment has a blank behind its #`,
    'title: "Tube #1"',
  ],
  [
    "text beneath no part",
    ["### plain\nThink", "Think"],
    '36 | "Think of a garden hose." | text beneath ### plain, ### technical, ### notes, ### caution',
    "### plain",
  ],
  [
    "a key in capitals",
    ["title: One", "Title: One"],
    "4 | unknown key Title | id, language, number, title, reader, aim, remember, goals, minutes, terms, sources, start, states, recall, tell, glossary, publications; nearest: title",
    "title: One tube, two widths",
  ],
  [
    "a line that begins a blank too early",
    ["    right: true", "   right: true"],
    "29 | a line that begins 3 blanks in | as many as the lines that it belongs to: 4",
    "    right: true",
  ],
];

test("the lesson has no fault before any slip", () => expect(faultsOf(LESSON)).toEqual([]));

test.each(SLIPS)("%s: one fault, and what can be fixed is", (_, [wrong, by], told, right) => {
  const text = LESSON.replace(wrong, () => by);
  expect(text).not.toBe(LESSON);
  const faults = faultsOf(text);
  expect(
    faults.map(({ path, found, allowed }) =>
      // Two digits of the model's numbers: the third is the solver's.
      `${path.replace("lesson.md:", "")} | ${found} | ${allowed}`.replaceAll(/\b0\.\d{4}\b/g, (number) =>
        Number(number).toFixed(2),
      ),
    ),
  ).toEqual([told]);
  const fix = plainFix(faults[0]!, text);
  expect(fix === null).toBe(right === null);
  if (!fix) return;
  expect(fix.text.split("\n")).toContain(right);
  expect(faultsOf(fix.text)).toEqual([]);
});

test("line ends of Windows and the mark at the start are no slip", () => {
  expect(faultsOf(`\uFEFF${LESSON.replaceAll("\n", "\r\n")}`)).toEqual([]);
});

test("one dash at the start of a line may be speech", () => {
  expect(faultsOf(LESSON.replace("Think of a garden hose.", "— Think of a garden hose."))).toEqual([]);
});
