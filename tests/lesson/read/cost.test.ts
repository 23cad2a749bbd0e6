/** Texts made to take long: each is reported by its own fault, and twice the text takes about twice the time. */
import { readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { formulaFault } from "../../../src/lesson/format/formula.ts";
import { LIMITS, RECORD_LIMITS } from "../../../src/lesson/format/limits.ts";
import { fenceAfter, readFence, readStepHeading } from "../../../src/lesson/read/heading.ts";
import { readLesson } from "../../../src/lesson/read/read.ts";
import { readProse } from "../../../src/lesson/read/read-prose.ts";

const GUIDE = readFileSync(new URL("../../../docs/authoring.md", import.meta.url), "utf8");
const LESSON = /````markdown\n([\s\S]*?)````/.exec(GUIDE)![1]!;
const inFront = (text: string) => LESSON.replace("\n---\n", `\n${text}\n---\n`);
const inWords = (text: string) => LESSON.replace("Blood from", `${text} Blood from`);
const technical = (text: string) => `${LESSON}\n### technical\n${text}\n`;

const reported = (text: string): string =>
  readLesson(text, "x.md")
    .faults.map(({ path, found, allowed }) => `${path} ${found} | ${allowed}`)
    .join("\n");

/** ms of the quickest call of some, so that what else the machine does at the time is not counted. */
function cost(act: () => void): number {
  const end = performance.now() + 10;
  let quickest = Number.POSITIVE_INFINITY;
  let now = performance.now();
  do {
    const start = now;
    act();
    now = performance.now();
    quickest = Math.min(quickest, now - start);
  } while (now < end);
  return quickest;
}

/** Four times the text in about four times the time: sixteen would be quadratic, sixty-four cubic. */
const MAX_RATIO = 8;

/** The quickest of each, taken in turn, so that what else the machine does falls on both; until it holds or has failed often. */
function expectLinear(read: (text: string) => void, make: (size: number) => string, size: number): void {
  const [short, long] = [make(size / 2), make(2 * size)];
  let [once, fourfold] = [Number.POSITIVE_INFINITY, Number.POSITIVE_INFINITY];
  for (let round = 0; round < 20; round++) {
    once = Math.min(
      once,
      cost(() => read(short)),
    );
    fourfold = Math.min(
      fourfold,
      cost(() => read(long)),
    );
    if (round > 2 && fourfold / once < MAX_RATIO) break;
  }
  expect(fourfold / once).toBeLessThan(MAX_RATIO);
}

const numbered = (count: number) => Array.from({ length: count }, (_, n) => `k${n}: 1`).join("\n");

describe("what makes a text slow to read is reported", () => {
  test.each([
    [
      "a heading of blanks",
      `${LESSON}\n## a${" ".repeat(2000)}{#}b\n\n### plain\nx\n`,
      /a title of 2005 characters \| at most 200/,
    ],
    ["50,000 backticks", `${LESSON}\n${"`".repeat(50_000)} x y\n`, /characters \| at most 8000 in one part/],
    ["50,000 backticks that open a block", `${LESSON}\n${"`".repeat(50_000)}\n`, /a block without an end/],
    ["20,000 keys", inFront(numbered(20_000)), /\d+ (lines|characters) \| at most \d+/],
    ["many keys", inFront(numbered(900)), /907 keys \| at most 200/],
    ["20,000 brackets that close nothing", inFront("a: ]\n".repeat(20_000)), /20\d+ lines \| at most 5000/],
    ["many brackets that close nothing", inFront("a: ]\n".repeat(1500)), /keys \| at most 200/],
    ["a deep list in one line", inFront(`x:\n  ${"- ".repeat(3000)}a`), /levels deep \| at most 20/],
    ["deep brackets", inFront(`x: ${"[".repeat(3000)}`), /settings 3000 levels deep \| at most 20/],
    ["deep braces over lines", inFront(`x: ${"{a:\n ".repeat(500)}`), /levels deep \| at most 20/],
    [
      "thousands of steps",
      LESSON + Array.from({ length: 900 }, (_, n) => `\n## a {#s${n}}\n### plain\nx\n`).join(""),
      /a further step \| at most 60 steps/,
    ],
    [
      "a long claim",
      inWords(`[x]{claim: a${" ".repeat(4000)}b}`),
      /a claim of 4002 characters \| at most 400/,
    ],
    [
      "a long number",
      inWords(`{{ a${" + a".repeat(500)} | mmHg 1 }}`),
      /an expression of \d+ characters \| at most 400/,
    ],
    [
      "a matrix of 7,900 cells",
      technical(`$$\\begin{matrix}${"&".repeat(7900)}\\end{matrix}$$`),
      /an equation of 7926 characters \| at most 1000/,
    ],
    [
      "a matrix of 900 cells",
      technical(`$$\\begin{matrix}${"&".repeat(900)}\\end{matrix}$$`),
      /900 cells in an equation \| at most 100/,
    ],
    [
      "deep TeX",
      technical(`$${"{".repeat(300)}x${"}".repeat(300)}$`),
      /300 levels in an equation \| at most 20/,
    ],
    [
      "TeX that doubles itself",
      technical("$\\def\\a{xx}\\def\\b{\\a\\a}\\b$"),
      /\\def \| an equation without definitions/,
    ],
    ["a long file", LESSON + "x".repeat(300_000), /\d+ characters \| at most 200000/],
  ])("%s", (_, text, fault) => {
    expect(reported(text)).toMatch(fault);
  });

  test("thousands of faults are reported as a hundred, and the rest in one line", () => {
    const { faults } = readLesson(technical("[a](b) ".repeat(1000)), "x.md");
    expect(faults).toHaveLength(LIMITS.faults + 1);
    expect(faults.at(-1)!.found).toBe("further faults");
  });

  test("one error in the front matter is not reported a thousand times", () => {
    expect(readLesson(inFront("a: ]\n".repeat(150)), "x.md").faults.length).toBeLessThan(8);
  });
});

describe("twice the text costs about twice the time", () => {
  const lesson = (text: string) => readLesson(text, "x.md");
  const prose = (text: string) => readProse(text, 1, () => {});
  const insideBlock = (line: string) => fenceAfter("```", line);
  test.each<[string, (text: string) => void, (size: number) => string, number]>([
    ["a heading of blanks", readStepHeading, (size) => `## a${" ".repeat(size)}{#}b`, 40_000],
    ["a heading of braces", readStepHeading, (size) => `## ${"{#".repeat(size)}}`, 40_000],
    ["a fence of backticks", readFence, (size) => `${"`".repeat(size)} x y`, 40_000],
    ["a fence within blanks", readFence, (size) => `${" ".repeat(size)}\`\`\`${" ".repeat(size)}x y`, 40_000],
    ["backticks within a block", insideBlock, (size) => `${"`".repeat(size)} x`, 40_000],
    ["braces of an equation", formulaFault, (size) => "{\\left(&".repeat(size), 60],
    ["a lesson with a line of backticks", lesson, (size) => `${LESSON}\n${"`".repeat(size)} x y\n`, 90_000],
    [
      "a lesson with a heading of blanks",
      lesson,
      (size) => `${LESSON}\n## a${" ".repeat(size)}{#}b\n`,
      90_000,
    ],
    ["keys", lesson, (size) => inFront(numbered(size)), 2000],
    ["brackets that close nothing", lesson, (size) => inFront("a: ]\n".repeat(size)), 2000],
    ["keys within the limit", lesson, (size) => inFront(numbered(size)), 90],
    ["brackets within the words", prose, (size) => "[".repeat(size), 3500],
    ["figures that do not end", prose, (size) => "![aaaaaaaa".repeat(size), 3500],
    ["stars within the words", prose, (size) => "*a **b ".repeat(size), 500],
    ["links to nowhere", lesson, (size) => inWords(`[a](#${"b".repeat(30)}) `.repeat(size)), 100],
  ])("%s", (_, read, make, size) => {
    expectLinear(read, make, size);
  });
});

test("what an author may write is read as before", () => {
  expect(readStepHeading("## A wide tube {#wide}  ")).toEqual({ title: "A wide tube", id: "wide" });
  expect(readStepHeading("## A {b} c")).toEqual({ title: "A {b} c", id: "" });
  expect(readStepHeading("##")).toEqual({ title: "", id: "" });
  expect(readStepHeading("### plain")).toBeNull();
  expect(readFence(" ```scene ")).toEqual({ mark: "```", name: "scene" });
  expect(readFence("``")).toBeNull();
  expect(fenceAfter("````", "```")).toBe("````");
  expect(fenceAfter("```", "````")).toBeNull();
  expect(RECORD_LIMITS.characters).toBeGreaterThanOrEqual(LIMITS.part);
});
