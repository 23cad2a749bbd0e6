// @vitest-environment happy-dom
/** A lesson of six steps, written by the form's own edits in German, packaged by each standard, answered, and reported to the course system. */
import { readFileSync } from "node:fs";
import { beforeAll, expect, test } from "vitest";
import { checkDraft } from "../../src/lesson/check/draft-check.ts";
import {
  addStep,
  setBlock,
  setBlockText,
  setFront,
  setHeading,
  setPart,
} from "../../src/lesson/edit/lesson-edit.ts";
import { renameStep } from "../../src/lesson/edit/rename-step.ts";
import { outlineOf } from "../../src/lesson/edit/text-outline.ts";
import { type Path, recordText } from "../../src/lesson/edit/yaml-edit.ts";
import type { QuestionKind } from "../../src/lesson/format/question-schema.ts";
import type { Library } from "../../src/lesson/library/library.ts";
import { joinFigures } from "../../src/lesson/own/own-figures.ts";
import { readOwn } from "../../src/lesson/own/read-own.ts";
import { cmi5Record } from "../../src/lms/cmi5.ts";
import { readLaunch } from "../../src/lms/cmi5-launch.ts";
import { scormRecord } from "../../src/lms/scorm.ts";
import { scorm2004Record } from "../../src/lms/scorm2004.ts";
import { newQuestion } from "../../src/modes/author/form/question-table.ts";
import { solve } from "../../src/sim/circulation/solve.ts";
import { nameOf } from "./cmi5-rules.ts";
import { FORGETFUL } from "./cmi5-visit.ts";
import { cmi5System } from "./course-systems/cmi5-system.ts";
import { readManifest } from "./course-systems/scorm-manifest.ts";
import { courseOf, packaged, study } from "./course-systems/three-lessons.ts";
import { courseSystem } from "./scorm-system.ts";
import { courseSystem as courseSystem2004 } from "./scorm2004-system.ts";

type Edit = readonly [Path, unknown];
const entry = (list: string, key: string, words: Readonly<Record<string, string>>): Edit[] =>
  Object.entries(words).map(([name, word]) => [[list, key, name], word]);
const below = "pressures.hepaticVein";
const earlier = "previous.pressures.hepaticVein";

/** Title, what is said, and what is asked. */
const STEPS: readonly (readonly [
  title: string,
  said: string,
  kind: QuestionKind | null,
  edits: readonly Edit[],
])[] = [
  ["Ein weiter Schlauch", "Blut aus den Beinen fließt hier nach oben.", null, []],
  [
    "Was kommt?",
    "Jetzt wird der Schlauch enger.",
    "predict",
    [
      [["ask"], "Was macht der Druck davor?"],
      ...entry("answers", "a", {
        say: "Er steigt",
        because: "Es staut sich.",
        right: `${below} > ${earlier} + 0.1`,
      }),
      ...entry("answers", "b", {
        say: "Er bleibt",
        because: "Nein: es staut sich.",
        right: `${below} <= ${earlier} + 0.1`,
      }),
      [["reveal"], "narrow"],
    ],
  ],
  ["Der enge Schlauch", "Der Druck davor ist gestiegen.", null, []],
  [
    "Was hilft?",
    "Manchmal weitet man eine enge Stelle.",
    "choose",
    [
      [["ask"], "Was ändert sich dann?"],
      ...entry("answers", "a", { say: "Der Druck davor sinkt", because: "Das Blut hat mehr Platz." }),
      ...entry("answers", "b", { say: "Der Takt", because: "Den macht das Herz selbst." }),
    ],
  ],
  [
    "Wie viel?",
    "Schätzen Sie, was der Schlauch kostet.",
    "estimate",
    [
      [["ask"], "Wie viel Druck geht verloren?"],
      [["close"], "Gut geschätzt."],
      [["low"], "Es ist mehr."],
      [["high"], "Es ist weniger."],
    ],
  ],
  [
    "Von oben nach unten",
    "Blut fließt vom hohen zum niedrigen Druck.",
    "order",
    [
      [["ask"], "Wo ist der Druck höher?"],
      ...entry("items", "a", { say: "Lebervenen" }),
      ...entry("items", "b", { say: "Vorhof" }),
      [["right"], "So fließt es."],
      [["wrong"], "Andersherum."],
    ],
  ],
];

/** From what a new lesson begins with, as the form goes about it. */
function written(): string {
  let text = readFileSync("lessons/new-lesson.md", "utf8");
  for (const [key, word] of Object.entries({
    id: "enger-schlauch",
    language: "de",
    title: "Eng: was kostet das?",
  }))
    text = setFront(text, [key], word)!;
  for (const at of [0, 2, 3, 4]) text = addStep(text, at, "", `step-${at}`);
  for (const [index, [title, said, kind, edits]] of STEPS.entries()) {
    text = setHeading(text, index, title, outlineOf(text).steps[index]!.id);
    text = setPart(text, index, "plain", index === 0 ? `${said}\n\n![Ein Schlauch](schlauch.svg)` : said);
    if (kind) text = setBlockText(text, index, "question", recordText(newQuestion(kind, {})));
    text = setBlock(text, index, "question", edits)!;
  }
  const renamed = renameStep(text, 2, "eng");
  if ("refused" in renamed) throw new Error(renamed.refused);
  const drawing = btoa('<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 9 4"><path d="M0 2H9"/></svg>');
  return joinFigures(renamed.text, [{ name: "schlauch.svg", data: drawing }]);
}

const FILE = "enger-schlauch.md";
let own: { file: string; text: string }[];
let library: Library;

beforeAll(() => {
  own = [{ file: FILE, text: written() }];
  const { lessons, faults } = readOwn(own, new Set());
  expect(faults).toEqual([]);
  library = { lessons, own: new Set(lessons.map(({ id }) => id)) } as unknown as Library;
});

test("it has no fault, words and model", () => {
  const [lesson] = library.lessons;
  expect(lesson!.steps.map(({ id }) => id)).toEqual(["wide", "step-0", "eng", "step-2", "step-3", "step-4"]);
  expect(lesson!.steps[0]!.plain.prose.some(({ kind }) => kind === "picture")).toBe(true);
  expect([...checkDraft(lesson!, solve)].at(-1)).toEqual({ steps: 6, of: 6, faults: [] });
});

const clock = { now: () => 0, stamp: () => "2026-11-29T09:30:05.123Z" };
const ASKED = [
  "Was macht der Druck davor?",
  "Was ändert sich dann?",
  "Wie viel Druck geht verloren?",
  "Wo ist der Druck höher?",
];
/** The page of a package has the lesson from nowhere else. */
const opened = (files: Record<string, string>, address: string) => {
  const course = courseOf(files, address);
  const { lessons } = readOwn(course.own, new Set());
  return { course, from: { lessons, own: new Set(lessons.map(({ id }) => id)) } as unknown as Library };
};

test.each(["scorm12", "scorm2004"] as const)(
  "by %s each answer is reported, and the lesson passed",
  async (standard) => {
    const files = await packaged(standard, false, library, own);
    const [item] = readManifest(files["imsmanifest.xml"]!, standard, Object.keys(files));
    const { course, from } = opened(files, item!.href);
    const is12 = standard === "scorm12";
    const system = is12 ? courseSystem({}) : courseSystem2004({});
    const voice = is12
      ? scormRecord(system.checked as Parameters<typeof scormRecord>[0], clock)
      : scorm2004Record(system.checked as Parameters<typeof scorm2004Record>[0], clock);
    await study(voice, course, 1, true, from);
    const get = (element: string) => String(system.api.getCMIValue(element));
    expect(get("cmi.interactions._count")).toBe("4");
    if (is12) {
      expect(get("cmi.core.lesson_status")).toBe("passed");
      // Write only, by the standard: read past its rules.
      const kept = JSON.stringify(system.api.cmi);
      for (const step of ["step-0", "step-2", "step-3", "step-4"])
        expect(kept).toContain(`"id":"enger-schlauch_${step}"`);
    } else {
      expect(get("cmi.success_status")).toBe("passed");
      expect([0, 1, 2, 3].map((at) => get(`cmi.interactions.${at}.description`))).toEqual(
        ASKED.map((words) => `{lang=de}${words}`),
      );
    }
    expect(system.faults).toEqual([]);
  },
);

test("by cmi5 each answer is a statement with its question and its choices in German", async () => {
  const files = await packaged("cmi5", false, library, own);
  const system = cmi5System(files["cmi5.xml"]!, "https://course.example");
  const { address, session } = system.launch(system.units[0]!);
  const { course, from } = opened(files, address);
  const voice = cmi5Record(readLaunch(address.slice(address.indexOf("?")))!, {
    ...clock,
    ask: (url, init) => session.answer(new Request(url, init)),
    id: () => crypto.randomUUID(),
    keeper: FORGETFUL,
  });
  await study(voice, course, 1, true, from);
  const answered = session.statements.filter((each) => nameOf(each) === "answered");
  const definitions = answered.map(
    ({ object }) => (object as unknown as { definition: Record<string, Record<string, string>> }).definition,
  );
  expect(definitions.map(({ description, name }) => (description ?? name)!.de)).toEqual(ASKED);
  expect(JSON.stringify(definitions[1]!.choices)).toContain("Der Druck davor sinkt");
  expect(session.refused).toEqual([]);
  expect(system.isSatisfied(system.units[0]!)).toBe(true);
});
