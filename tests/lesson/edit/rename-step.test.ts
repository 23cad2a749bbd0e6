import { expect, test } from "vitest";
import { renameStep } from "../../../src/lesson/edit/rename-step.ts";
import { readLesson } from "../../../src/lesson/read/read.ts";

const LESSON = `---
id: mine
number: 90
title: Two widths
reader: parents
aim: see it
remember: Narrow costs.
minutes: 3
recall: [narrow-ask, mine#again, 03-pathways#narrow] # at the end
---

## Ask {#narrow-ask}

### plain
See [what follows](#narrow), or [the kit's](03-pathways#narrow).

\`\`\`question
kind: predict
ask: What comes of it? [Look](mine#narrow).
reveal: narrow # the next one
answers:
  narrow: { say: It rises, because: "See [there](#narrow).", right: pathway.pressureDrop > 0, show: narrow }
  same: { say: It stays, because: No., right: pathway.pressureDrop < 0 }
\`\`\`

## Narrow {#narrow}

### plain
It is narrow.

## Again {#again}

### plain
The word narrow stays.

\`\`\`question
kind: choose
ask: And now?
answers:
  a: { say: A, because: So., right: true }
  b: { say: B, because: Not so., show: narrow }
\`\`\`
`;

const renamed = (text: string, index: number, id: string): string => {
  const done = renameStep(text, index, id);
  if ("refused" in done) throw new Error(done.refused);
  return done.text;
};
/** Lines that changed, as they are now. */
const changed = (before: string, after: string) => {
  const lines = before.split("\n");
  return after.split("\n").filter((line, at) => line !== lines[at]);
};

test("what names a step follows its new id, and nothing else changes", () => {
  const after = renamed(LESSON, 1, "tight");
  expect(changed(LESSON, after)).toEqual([
    "See [what follows](#tight), or [the kit's](03-pathways#narrow).",
    "ask: What comes of it? [Look](mine#tight).",
    "reveal: tight # the next one",
    '  narrow: { say: It rises, because: "See [there](#tight).", right: pathway.pressureDrop > 0, show: tight }',
    "## Narrow {#tight}",
    "  b: { say: B, because: Not so., show: tight }",
  ]);
  expect(readLesson(after, "mine.md").faults).toEqual(readLesson(LESSON, "mine.md").faults);
});

test("questions to be asked again at the end follow too, with the lesson's name or without", () => {
  const once = renamed(LESSON, 0, "before");
  expect(changed(LESSON, renamed(once, 2, "once-more"))).toEqual([
    "recall: [before, mine#once-more, 03-pathways#narrow] # at the end",
    "## Ask {#before}",
    "## Again {#once-more}",
  ]);
});

test.each([
  ["letters", "Tight tube"],
  ["letters", ""],
  ["reserved", "constructor"],
  ["taken", "again"],
])("is refused: %s", (refused, id) => {
  expect(renameStep(LESSON, 1, id)).toEqual({ refused });
});

test("is refused where settings that cannot be read may name the step, and only there", () => {
  const broken = LESSON.replace("kind: choose", "kind: [choose");
  expect(renameStep(broken, 1, "tight")).toEqual({ refused: "unread" });
  expect(renamed(broken, 0, "first")).toContain("## Ask {#first}");
});

test("of two steps with one id, what names it stays", () => {
  const twice = LESSON.replace("{#again}", "{#narrow}");
  expect(changed(twice, renamed(twice, 2, "again-now"))).toEqual(["## Again {#again-now}"]);
});
