import { readFileSync } from "node:fs";
import { expect, test } from "vitest";
import { stepState } from "../../../src/lesson/model/states.ts";
import { inlinesOf } from "../../../src/lesson/prose.ts";
import { readLesson } from "../../../src/lesson/read/read.ts";
import { USUAL_HAEMOGLOBIN } from "../../../src/sim/parameters/request.ts";

const LESSON = `---
id: two-widths
number: 90
title: One tube, two widths
reader: parents
aim: see it
remember: Narrow places cost push.
minutes: 3
states:
  narrowTube: { set: { conduitDiameter: 10 } }
---

## A wide tube {#wide}

\`\`\`scene
stage: extracardiac
set: { conduitDiameter: 18, fenestrationDiameter: 4 }
view: { dye: true }
\`\`\`

### plain
It takes {{ pathway.pressureDrop | mmHg 1 }}.

## A narrow tube {#narrow}

\`\`\`scene
set: { conduitDiameter: 10 }
view: { dye: true }
\`\`\`

### plain
[More is lost.]{claim: pathway.pressureDrop rises from previous}

## Before {#before}

\`\`\`scene
stage: glenn
\`\`\`

### plain
Words.
`;

const read = (text: string) => readLesson(text, "two-widths.md");
const faultsOf = (text: string) =>
  read(text).faults.map(({ path, found, allowed }) => `${path} ${found} | ${allowed}`);

test("a body without haemoglobin takes the usual one", () => {
  const { value } = read(LESSON.replace("stage: extracardiac", "body: { ageYears: 9, bsa: 1 }"));
  expect(stepState(value!, 0).request.body).toEqual({ ageYears: 9, bsa: 1, haemoglobin: USUAL_HAEMOGLOBIN });
});

test("a lesson without faults is read, each step laid over the one before", () => {
  const { value, faults } = read(LESSON);
  expect(faults).toEqual([]);
  const [wide, narrow, before] = [0, 1, 2].map((index) => stepState(value!, index));
  expect(wide!.request.set).toEqual({ fenestrationDiameter: 4 });
  expect(narrow!.request.set).toEqual({ fenestrationDiameter: 4, conduitDiameter: 10 });
  expect([wide!.view.dye, narrow!.view.dye]).toEqual([1, 2]);
  // Neither parameter acts at the Glenn stage.
  expect(before!.request).toMatchObject({ stage: "glenn", set: {} });
});

test.each([
  [
    "an unknown key of the front matter",
    ["minutes: 3", "minuts: 3"],
    /two-widths.md:8 unknown key minuts .*nearest: minutes/,
  ],
  ["a missing key", ["remember: Narrow places cost push.\n", ""], /no remember \| remember is needed/],
  [
    "an unknown stage",
    ["stage: extracardiac", "stage: extracardiak"],
    /:16 stage: "extracardiak" .*nearest: extracardiac/,
  ],
  [
    "a parameter that does not exist",
    ["conduitDiameter: 18", "conduitDiametre: 18"],
    /:17 set.conduitDiametre: .*nearest: conduitDiameter/,
  ],
  [
    "a value out of range",
    ["conduitDiameter: 18", "conduitDiameter: 80"],
    /:17 set.conduitDiameter: 80 \| 8 to 30 mm/,
  ],
  [
    "an output that does not exist",
    ["pathway.pressureDrop |", "pathway.pressurDrop |"],
    /:22 pathway.pressurDrop .*nearest: pressureDrop/,
  ],
  ["a unit that does not exist", ["mmHg 1 }}", "mmhg 1 }}"], /:22 unit "mmhg" .*nearest: mmHg/],
  ["a claim that says nothing", ["rises from previous", "goes up"], /:32 /],
  [
    "a state that is not declared",
    ["rises from previous", "rises from wideTube"],
    /:32 from wideTube .*narrowTube/,
  ],
  ["two steps with one id", ["{#narrow}", "{#wide}"], /:24 id "wide" twice/],
  ["a step without words", ["### plain\nWords.\n", ""], /step "before" without a plain version/],
  ["an unknown part", ["### plain\nWords.", "### plane\nWords."], /"plane" .*nearest: plain/],
  [
    "broken YAML",
    ["set: { conduitDiameter: 10 }\nview", "set: { conduitDiameter: 10\nview"],
    /two-widths.md:\d+ /,
  ],
  ["a block without an end", ["stage: glenn\n```", "stage: glenn"], /a block without an end/],
  [
    "a link to another place",
    ["Words.", "[Words](https://example.org/x)."],
    /link to "https:\/\/example.org\/x"/,
  ],
  ["a script's address", ["Words.", "[Words](javascript:alert(1))."], /link to "javascript:alert\(1\)"/],
  [
    "a sentence cut at its comma",
    ["view: { dye: true }", "view: { dye: true, and then some }"],
    /and then some \| .*stands in quotes/,
  ],
  [
    "a name that JavaScript keeps for itself",
    ["Words.", "Words {{ constructor.constructor | mmHg 1 }}."],
    /constructor\.constructor \| pressures/,
  ],
  ["an equation for families", ["Words.", "Words $x^2$."], /an equation \| no equations/],
  [
    "a pause that is not the lesson's to set",
    ["view: { dye: true }", "view: { paused: false }"],
    /unknown key view.paused/,
  ],
  [
    "a place to point at that no picture has",
    ["view: { dye: true }", "view: { focus: banana }"],
    /:18 view.focus: "banana" \| svc, ivc, /,
  ],
  [
    "a place to come close to that no plane has",
    ["view: { dye: true }", "view: { camera: chambre }"],
    /:18 view.camera: "chambre" \| whole, .*nearest: chamber/,
  ],
  [
    "a heading in a text version",
    ["Words.", "Words.\n\n#### More"],
    /:43 a heading, "#### More" \| paragraphs/,
  ],
  ["an underlined heading", ["Words.", "More\n===="], /:42 a heading, "===="/],
  ["a table", ["Words.", "| a | b |"], /:41 a table, "\| a \| b \|" \| paragraphs and lists/],
  ["a table without outer bars", ["Words.", "a | b\n--- | ---\n1 | 2"], /:42 a table, "--- \| ---"/],
])("%s is refused with its line and what is allowed", (_, [from, to], pattern) => {
  expect(LESSON).toContain(from);
  const faults = faultsOf(LESSON.replace(from!, to!));
  expect(faults.join("\n")).toMatch(pattern);
});

test("all faults of a file are reported at once", () => {
  const faults = faultsOf(
    LESSON.replace("minutes: 3", "minuts: 3")
      .replace("stage: extracardiac", "stage: x")
      .replace("mmHg 1 }}", "mmhg 1 }}"),
  );
  expect(faults.map((fault) => fault.split(" | ")[0])).toEqual([
    "two-widths.md:2 no minutes",
    "two-widths.md:8 unknown key minuts",
    'two-widths.md:16 stage: "x"',
    'two-widths.md:22 unit "mmhg"',
  ]);
});

test("bars and signs within a sentence are no table and no heading", () => {
  const line = "Numbers #1 and {{ pathway.pressureDrop | mmHg 1 }} and 2 - 3 = x.";
  expect(faultsOf(LESSON.replace("Words.", `${line}\n\n- one\n- two`))).toEqual([]);
});

test("HTML stays text", () => {
  const { value } = read(LESSON.replace("Words.", "<script>alert(1)</script> <img src=x onerror=alert(1)>"));
  const kinds = new Set([...inlinesOf(value!.steps[2]!.plain.prose)].map(({ kind }) => kind));
  expect([...kinds]).toEqual(["text"]);
});

test("an alias that unfolds without end is refused", () => {
  const bomb = `a: &a [x,x,x,x,x,x,x,x,x]\nb: &b [${"*a,".repeat(9)}]\nc: &c [${"*b,".repeat(9)}]\nd: [${"*c,".repeat(9)}]\n`;
  expect(faultsOf(LESSON.replace("number: 90\n", `number: 90\n${bomb}`))).toEqual([
    "two-widths.md:2 Excessive alias count indicates a resource exhaustion attack | YAML",
  ]);
});

test("a lesson's example in the author's guide is read without a fault", () => {
  const guide = readFileSync(new URL("../../../docs/authoring.md", import.meta.url), "utf8");
  const example = /````markdown\n([\s\S]*?)````/.exec(guide)![1]!;
  expect(readLesson(example, "my-lesson.md").faults).toEqual([]);
});
