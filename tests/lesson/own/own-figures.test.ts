import { expect, test } from "vitest";
import { readCourse } from "../../../src/lesson/library/lesson-course.ts";
import {
  FIGURE_LIMITS,
  joinFigures,
  readFigures,
  splitFigures,
} from "../../../src/lesson/own/own-figures.ts";
import { readOwn } from "../../../src/lesson/own/read-own.ts";
import { readLesson } from "../../../src/lesson/read/read.ts";
import { servedLessons } from "../../../src/modes/shared/own/own-lessons.ts";
import { fitsAsText, MAX_LENGTH } from "../../../src/modes/shared/own/own-texts.ts";

const DOT = "iVBORw0KGgo=";
const LESSON = `---
id: ours
number: 90
title: Ours
reader: parents
aim: see it
remember: Narrow costs.
minutes: 3
---

## Wide {#wide}

### plain
It is wide.

![A hose with a kink](hose.png)
`;
const FILE = joinFigures(LESSON, [{ name: "hose.png", data: DOT }]);
const faultsOf = (text: string) =>
  readLesson(text, "ours.md").faults.map(({ path, found, allowed }) => `${path} ${found} | ${allowed}`);
const pictures = (text: string) =>
  readOwn([{ file: "ours.md", text }], new Set()).lessons[0]!.steps[0]!.plain.prose.filter(
    ({ kind }) => kind === "picture",
  );

test("a figure stands in the words with its alternative text, as an address that loads nothing", () => {
  expect(pictures(FILE)).toEqual([
    { kind: "picture", alt: "A hose with a kink", src: `data:image/png;base64,${DOT}`, line: 16 },
  ]);
});

test("it comes with the file, by whatever way: from a served folder, within a course package, with line ends of Windows", async () => {
  const windows = FILE.replaceAll("\n", "\r\n");
  expect(pictures(windows)).toEqual(pictures(FILE));
  const answers: Record<string, string> = {
    "own/index.json": '{ "lessons": ["ours.md"] }',
    "own/ours.md": FILE,
  };
  const { files, faults } = await servedLessons(async (url) => new Response(answers[url]));
  expect([files.map(({ text }) => text), faults]).toEqual([[FILE], []]);
  const course = {
    version: 1,
    lessons: ["ours"],
    textVersion: "plain",
    passMark: null,
    completedWhen: "seen",
    own: [{ file: "ours.md", text: FILE }],
  };
  expect(readCourse(JSON.stringify(course))).toMatchObject({ own: [{ text: FILE }] });
});

test.each<[string, string, string[]]>([
  [
    "one that was not added",
    FILE.replace("(hose.png)", "(hoses.png)"),
    ['ours.md:16 figure "hoses.png" | hose.png; nearest: hose.png'],
  ],
  [
    "one in a lesson without any",
    LESSON,
    [
      'ours.md:16 figure "hose.png" | a figure that was added to this lesson (author page, Figures); it has none yet',
    ],
  ],
  [
    "one without alternative text",
    FILE.replace("A hose with a kink", " "),
    ['ours.md:16 figure "hose.png" without alternative text | ![what it shows, in words](hose.png)'],
  ],
  [
    "one within a sentence",
    FILE.replace("\n\n![", " Look: !["),
    [
      "ours.md:14 a picture within a sentence, ![A hose with a kink](hose.png) | a picture in a paragraph of its own",
    ],
  ],
  [
    "one that is too large",
    joinFigures(LESSON, [{ name: "hose.png", data: "A".repeat(300_000) }]),
    [
      "ours.md:17 hose.png: 225 kB | at most 200 kB",
      'ours.md:16 figure "hose.png" | a figure that was added to this lesson (author page, Figures); it has none yet',
    ],
  ],
  [
    "one by another name",
    FILE.replace("\nhose.png ", "\nhose.exe "),
    [
      'ours.md:17 figure "hose.exe" | a name of small letters, digits and hyphens that ends in .svg, .png or .jpg',
      'ours.md:16 figure "hose.png" | a figure that was added to this lesson (author page, Figures); it has none yet',
    ],
  ],
])("%s is refused", (_, text, faults) => expect(faultsOf(text)).toEqual(faults));

const svg = (inner: string) =>
  joinFigures(LESSON.replace("hose.png", "hose.svg"), [
    { name: "hose.svg", data: btoa(`<svg xmlns="http://www.w3.org/2000/svg">${inner}</svg>`) },
  ]);
const OF_PICTURE =
  'ours.md:16 figure "hose.svg" | a figure that was added to this lesson (author page, Figures); it has none yet';
const CLEANED = "added on the author page, it is cleaned";

test.each<[string, string]>([
  ["<script>x()</script>", "hose.svg with <script>"],
  ["<svg:script>x()</svg:script>", "hose.svg with <svg:script>"],
  ['<a href="#b"><path/></a>', 'hose.svg with <a href="#b">'],
  ["<foreignObject><p>x</p></foreignObject>", "hose.svg with <foreignObject>"],
  ['<image href="data:image/png;base64,"/>', 'hose.svg with <image href="data:image/png;base64,"/>'],
  ['<path title=">" onload="x()"/>', 'hose.svg with <path title=">" onload="x()"/>'],
  ["<use xlink:href='https://example.org/x#y'/>", "hose.svg with <use xlink:href='https://example.org/x#y"],
])("a file's SVG with %s is refused wherever the file is opened", (inner, found) =>
  expect(faultsOf(svg(inner))).toEqual([
    `ours.md:17 ${found} | an SVG without scripts, links and pictures; ${CLEANED}`,
    OF_PICTURE,
  ]),
);

test.each(['<!DOCTYPE svg [<!ENTITY x "y">]>', "<!-- -->", "<?xml-stylesheet?>", "<<<", '<path d="'])(
  "nor one with %s, which is no tag",
  (inner) =>
    expect(faultsOf(svg(inner))).toEqual([
      `ours.md:17 hose.svg is no plain SVG | an SVG of tags alone; ${CLEANED}`,
      OF_PICTURE,
    ]),
);

test("an SVG of shapes, gradients and words is a figure; a file of another type under its name is none", () => {
  const drawn = `<style>path { fill: red }</style><path fill="url(#g)" aria-label="on = off"/><use href="#g"/><text>only = 3 &amp; on</text>`;
  expect(faultsOf(svg(drawn))).toEqual([]);
  const as = (name: string, data: string) => readFigures(`=== figures ===\n${name} ${data}\n`).faults;
  expect(as("a.jpg", DOT).map(({ found }) => found)).toEqual(["a.jpg is no JPEG"]);
  expect(as("a.png", btoa("GIF89a")).map(({ found }) => found)).toEqual(["a.png is no PNG"]);
  expect(as("a.svg", DOT).map(({ found }) => found)).toEqual(["a.svg is no plain SVG"]);
  expect(as("a.jpg", btoa("\xff\xd8\xff\xe0"))).toEqual([]);
});

test("the longest SVG of open tags is looked through at once", () => {
  const from = performance.now();
  expect(as200kB("<a ".repeat(60_000)).length + as200kB(`<a b="${'" '.repeat(90_000)}`).length).toBe(2);
  expect(performance.now() - from).toBeLessThan(3000);
});
const as200kB = (text: string) => readFigures(`=== figures ===\na.svg ${btoa(`<svg ${text}`)}\n`).faults;

test("all figures together have their bound, in number and in size", () => {
  const many = (count: number, size: number) =>
    readFigures(
      splitFigures(
        joinFigures(
          LESSON,
          Array.from({ length: count }, (_, index) => ({
            name: `f${index}.png`,
            data: DOT.replace("=", "A").padEnd(size, "A"),
          })),
        ),
      ).figures,
    );
  expect(many(FIGURE_LIMITS.count, 4).faults).toEqual([]);
  expect(many(FIGURE_LIMITS.count + 1, 4).faults.map(({ allowed }) => allowed)).toEqual([
    "at most 12 in a lesson",
  ]);
  expect(many(4, 240_000).faults.map(({ found }) => found)).toEqual(["figures of 720 kB"]);
  expect(fitsAsText(joinFigures("x".repeat(MAX_LENGTH - 1), many(3, 240_000).figures))).toBe(true);
  expect(fitsAsText("x".repeat(MAX_LENGTH + 1))).toBe(false);
});
