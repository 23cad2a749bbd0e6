/** The termbase of a language holds its lessons and glossary. */
import { cpSync, mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { expect, test } from "vitest";
import { readLessonFiles } from "../../../src/cli/lesson-files.ts";
import {
  glossaryTermFaults,
  lessonTermFaults,
  readTerms,
  type Terms,
} from "../../../src/lesson/check/check-terms.ts";
import { readLesson } from "../../../src/lesson/read/read.ts";
import { describeFault } from "../../../src/sim/faults.ts";
import { frontOf } from "../front.ts";

const TERMS = readTerms(
  `pressure:
  use: push
  not: [force*, lost push]
  because: force is another thing
clot:
  use: clot
  not: [lump]
`,
  "terms.yaml",
).value as Terms;

const lessonSaying = (plain: string, technical = "Nothing.") =>
  readLesson(
    `${frontOf()}
## One {#one}

### plain
${plain}

### technical
${technical}
`,
    "a.md",
  ).value!;

const found = (plain: string, technical?: string) =>
  lessonTermFaults(lessonSaying(plain, technical), TERMS).map(describeFault);

test("a refused word is reported with file, line, what was found, and the term with its reason", () => {
  expect(found("The blood has lost push.")).toEqual([
    'a.md:14: found "lost push"; allowed: push (force is another thing)',
  ]);
});

test("a star stands for endings, other words must be whole, and case does not matter", () => {
  expect(found("Forces act.")).toHaveLength(1);
  expect(found("A lumpy road.")).toEqual([]);
  expect(found("A Lump in it.")).toHaveLength(1);
});

test("what families do not read may say it: technical parts, keys of live numbers", () => {
  expect(found("It holds {{ pressures.pathway | mmHg 1 }}.", "The force on the wall.")).toEqual([]);
});

test("a glossary that names the thing otherwise is a fault", () => {
  const glossary = { clot: { term: "lump", plain: "Blood that has set." } };
  expect(glossaryTermFaults(glossary, TERMS, "glossary.yaml").map(describeFault)).toEqual([
    'glossary.yaml:1: found term "lump" of clot; allowed: "clot", as in terms.yaml',
  ]);
  expect(glossaryTermFaults({ clot: { term: "clot", plain: "Set blood." } }, TERMS, "g")).toEqual([]);
});

test("an unknown key, or a term without its word, is refused with its line", () => {
  const { value, faults } = readTerms("clot:\n  use: clot\n  nott: [lump]\n", "terms.yaml");
  expect(value).toBeNull();
  expect(describeFault(faults[0]!)).toMatch(/terms\.yaml:3: found unknown key clot\.nott; allowed: .*not/);
});

test("each language has a termbase, and its glossary and lessons keep to it", () => {
  const files = readLessonFiles("lessons");
  for (const [language, lessons] of Object.entries(files.lessons)) {
    const terms = files.terms[language]!;
    expect(Object.keys(terms).length, language).toBeGreaterThanOrEqual(12);
    const faults = [
      ...glossaryTermFaults(files.glossaries[language]!, terms, language),
      ...lessons.flatMap((lesson) => lessonTermFaults(lesson, terms)),
    ];
    expect(faults.map(describeFault)).toEqual([]);
  }
});

test("a language without a termbase is reported", () => {
  const folder = mkdtempSync(join(tmpdir(), "terms-"));
  try {
    cpSync("lessons", folder, { recursive: true });
    rmSync(join(folder, "fr", "terms.yaml"));
    expect(readLessonFiles(folder).faults.map(describeFault).join("\n")).toMatch(
      /fr\/terms\.yaml:1: found no terms/,
    );
  } finally {
    rmSync(folder, { recursive: true });
  }
});
