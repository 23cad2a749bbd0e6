import { readdirSync, readFileSync } from "node:fs";
import { expect, test } from "vitest";
import {
  addStep,
  duplicateStep,
  moveStep,
  removeStep,
  setBlock,
  setBlockText,
  setFront,
  setHeading,
  setPart,
} from "../../../src/lesson/edit/lesson-edit.ts";
import { outlineOf, partText, splitSaid } from "../../../src/lesson/edit/text-outline.ts";
import { newId } from "../../../src/lesson/read/new-id.ts";
import { readLesson } from "../../../src/lesson/read/read.ts";

const LESSON = `---
# ours
id: mine
number: 90
title: Two widths # for parents
reader: parents
aim: see it
remember: Narrow costs.
minutes: 3
---

## Wide {#wide}

\`\`\`scene
stage: extracardiac # the tube
set: { conduitDiameter: 18 }
\`\`\`

### plain
It is wide.

More of it.

### notes
Say it slowly.

## Narrow {#narrow}

### plain
It is narrow.

\`\`\`question
kind: choose
ask: Why?
answers:
  a: { say: A, because: So., right: true }
  b: { say: B, because: Not so. }
\`\`\`

### caution
Learning only.
`;

/** Lines of the first that the second lacks, and those that it has beyond. */
function difference(before: string, after: string) {
  const left = after.split("\n");
  const gone = before.split("\n").filter((line) => {
    const at = left.indexOf(line);
    if (at >= 0) left.splice(at, 1);
    return at < 0;
  });
  return { gone, come: left };
}
const readable = (text: string) => readLesson(text, "mine.md").faults;

test.each<[string, string | null, string[], string[]]>([
  [
    "the title",
    setFront(LESSON, ["title"], "A: B"),
    ["title: Two widths # for parents"],
    ['title: "A: B" # for parents'],
  ],
  ["a new setting", setFront(LESSON, ["tell"], "Why?"), [], ["tell: Why?"]],
  ["a step's title", setHeading(LESSON, 0, "Broad", "wide"), ["## Wide {#wide}"], ["## Broad {#wide}"]],
  ["what is said", setPart(LESSON, 0, "plain", "So wide.\n\nMore of it."), ["It is wide."], ["So wide."]],
  ["words around a block", setPart(LESSON, 1, "plain", "Slim."), ["It is narrow."], ["Slim."]],
  ["a part that was not there", setPart(LESSON, 1, "notes", "Wait."), [], ["### notes", "Wait.", ""]],
  ["a part that goes", setPart(LESSON, 0, "notes", ""), ["### notes", "Say it slowly.", ""], []],
  [
    "a parameter of the scene",
    setBlock(LESSON, 0, "scene", [[["set", "conduitDiameter"], 20]]),
    ["set: { conduitDiameter: 18 }"],
    ["set: { conduitDiameter: 20 }"],
  ],
  [
    "a scene that was not there",
    setBlock(LESSON, 1, "scene", [[["stage"], "glenn"]]),
    [],
    ["```scene", "stage: glenn", "```", ""],
  ],
  [
    "an answer",
    setBlock(LESSON, 1, "question", [[["answers", "b", "say"], "Both, or none"]]),
    ["  b: { say: B, because: Not so. }"],
    ['  b: { say: "Both, or none", because: Not so. }'],
  ],
  [
    "a question that goes",
    setBlockText(LESSON, 1, "question", ""),
    [
      ..."kind: choose|ask: Why?|answers:|  a: { say: A, because: So., right: true }".split("|"),
      "  b: { say: B, because: Not so. }",
      "```question",
      "```",
      "",
    ],
    [],
  ],
])("%s is changed alone", (_, after, gone, come) => {
  const changed = difference(LESSON, after!);
  expect([changed.gone.sort(), changed.come.sort()]).toEqual([gone.sort(), come.sort()]);
  expect(readable(after!)).toEqual([]);
});

test("a part has its words, whatever stands between them", () => {
  const outline = outlineOf(LESSON);
  expect(partText(outline, outline.steps[0]!, "plain")).toBe("It is wide.\n\nMore of it.");
  expect(partText(outline, outline.steps[1]!, "plain")).toBe("It is narrow.");
  expect(splitSaid("One\nline.\n\nMore.\n\nStill.")).toEqual({ said: "One\nline.", more: "More.\n\nStill." });
  expect(splitSaid("![A hose](hose.png)\n\nMore.")).toEqual({
    said: "",
    more: "![A hose](hose.png)\n\nMore.",
  });
});

test("steps are added, moved, doubled and taken out whole", () => {
  const ids = (text: string) => outlineOf(text).steps.map(({ id }) => id);
  const moved = moveStep(LESSON, 1, 0);
  expect(ids(moved)).toEqual(["narrow", "wide"]);
  expect(moveStep(moved, 1, 0)).toBe(LESSON);
  expect(ids(addStep(LESSON, 0, "Between", "between"))).toEqual(["wide", "between", "narrow"]);
  expect(removeStep(addStep(LESSON, 0, "Between", "between"), 1)).toBe(LESSON);
  expect(ids(duplicateStep(LESSON, 0, "wide-2"))).toEqual(["wide", "wide-2", "narrow"]);
  expect(ids(addStep("", -1, "First", "first"))).toEqual(["first"]);
  expect(readable(removeStep(LESSON, 1))).toEqual([]);
});

test("line ends and the mark at the start of a text stay as they are", () => {
  const windows = `\uFEFF${LESSON.replaceAll("\n", "\r\n")}`;
  expect(setPart(windows, 0, "notes", "One.\nTwo.")).toBe(
    `\uFEFF${setPart(LESSON, 0, "notes", "One.\nTwo.").replaceAll("\n", "\r\n")}`,
  );
});

test("a name for links is made of the title", () => {
  expect(newId("Où va l’énergie ?", [])).toBe("ou-va-l-energie");
  expect(newId("Enge Straße", [])).toBe("enge-strasse");
  expect(newId("Constructor", [])).toBe("constructor-2");
  expect(newId("¿?", ["step", "step-2"])).toBe("step-3");
});

const KIT = readdirSync("lessons/en").filter((name) => name.endsWith(".md"));
test.each(KIT)("every part and heading of %s can be written again and nothing changes", (name) => {
  const text = readFileSync(`lessons/en/${name}`, "utf8");
  const outline = outlineOf(text);
  for (const [index, step] of outline.steps.entries()) {
    expect(setHeading(text, index, step.title, step.id)).toBe(text);
    for (const part of ["plain", "technical", "notes", "caution"] as const)
      expect(setPart(text, index, part, partText(outline, step, part))).toBe(text);
    for (const block of ["scene", "question", "task"] as const)
      if (step.blocks[block]) expect(setBlock(text, index, block, [])).toBe(text);
    expect(removeStep(duplicateStep(text, index, "copy"), index + 1)).toBe(text);
  }
});
