/** What the lesson checker refuses. Long because each fault has its case. */
import { readdirSync, readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { readLessonFiles } from "../../../src/cli/lesson-files.ts";
import { checkCourse, checkLesson, type Report } from "../../../src/lesson/check/check.ts";
import { rememberAnswers } from "../../../src/lesson/check/check-model.ts";
import { checkWhole } from "../../../src/lesson/check/check-text.ts";
import { readingGrade } from "../../../src/lesson/check/reading-grade.ts";
import { spanishSyllables } from "../../../src/lesson/check/spanish-syllables.ts";
import { LANGUAGES_WITH_WORDING, notSaid } from "../../../src/lesson/check/wording.ts";
import { lessonSchemas } from "../../../src/lesson/format/json-schema.ts";
import type { Lesson } from "../../../src/lesson/lesson.ts";
import { judgeClaim, parseClaims } from "../../../src/lesson/model/claims.ts";
import { readLesson, refuseIn } from "../../../src/lesson/read/read.ts";
import { readPage } from "../../../src/lesson/read/read-page.ts";
import { readTranslation } from "../../../src/lesson/read/read-translation.ts";
import { solve } from "../../../src/sim/circulation/solve.ts";
import { CASES } from "../../../src/sim/parameters/request.ts";
import { frontOf } from "../front.ts";

const answer = rememberAnswers(solve);
const LIBRARY = { glossary: {}, sources: {}, lessons: [] };
const lessonOf = (plain: string, question = "", scene = "set: { conduitDiameter: 12 }") => `${frontOf()}
## One {#one}

### plain
Blood flows.

## Two {#two}

\`\`\`scene
${scene}
\`\`\`

${question && `\`\`\`question\n${question}\n\`\`\`\n`}
### plain
${plain}
`;
function check(text: string): Report {
  const { value, faults } = readLesson(text, "a.md");
  if (!value) throw new Error(faults.map(({ path, found }) => `${path} ${found}`).join("\n"));
  return checkLesson(value, LIBRARY, answer);
}
const found = (text: string) =>
  check(text)
    .faults.map(({ path, found: each }) => `${path} ${each}`)
    .join("\n");

describe("against the model", () => {
  test("a claim that the model bears out passes, its opposite is refused with both values", () => {
    expect(found(lessonOf("[More is lost.]{claim: pathway.pressureDrop rises from previous}"))).toBe("");
    expect(found(lessonOf("[Less is lost.]{claim: pathway.pressureDrop falls from previous}"))).toMatch(
      /a\.md:24 .*does not hold \(.*then/,
    );
    expect(found(lessonOf("[It is high.]{claim: pressures.atrium > 90}"))).toMatch(/does not hold/);
  });

  test("an output that the model does not have in this step is refused", () => {
    expect(found(lessonOf("It is {{ ledger.nowhere.share | % 0 }}."))).toMatch(/no value for/);
    expect(found(lessonOf("It is {{ extras.nothing | number 0 }}."))).toMatch(/no value for/);
  });

  test("a question has exactly one answer that the model gives", () => {
    const ask = (condition: string) =>
      `kind: choose\nask: Which?\nanswers:\n  a: { say: A, because: Since., right: ${condition} }\n  b: { say: B, because: Since., right: pressures.svc <= pressures.atrium }`;
    expect(found(lessonOf("Words.", ask("pressures.svc > pressures.atrium")))).toBe("");
    expect(found(lessonOf("Words.", ask("pressures.svc > 90")))).toMatch(/right by the model: none/);
  });

  test("a goal must be open, within reach, and have its best value within the range", () => {
    const goal = (until: string) =>
      `kind: goal\nask: Find it.\ncontrol: fenestrationDiameter\nuntil: ${until}\nbest: smallest\nreached: Yes.\nmissed: No.`;
    expect(found(lessonOf("Words.", goal("flows.fenestration > 0.4")))).toBe("");
    expect(found(lessonOf("Words.", goal("flows.fenestration > 40")))).toMatch(
      /no fenestrationDiameter reaches it/,
    );
    expect(found(lessonOf("Words.", goal("pressures.pathway > 1")))).toMatch(/holds before anything is done/);
  });
});

describe("words", () => {
  test("U23 more than 25 words at once are refused", () => {
    expect(found(lessonOf("We go on. ".repeat(9)))).toMatch(/27 words in the script/);
  });
  test("U11 a hard sentence is refused by its grade, a long one by its length", () => {
    expect(
      found(
        lessonOf(
          "Pathophysiological considerations necessitate comprehensive haemodynamic characterisation.",
        ),
      ),
    ).toMatch(/reading grade/);
    expect(found(lessonOf(`See ${"the big red dog and ".repeat(5)}me.`))).toMatch(/a sentence of 27 words/);
  });
  test("a typed result and words that talk down are refused", () => {
    expect(found(lessonOf("It takes 3 mmHg."))).toMatch(/a typed number, "3 mmHg"/);
    expect(found(lessonOf("It is just a tube."))).toMatch(/"just"/);
  });
  test("a word without an entry and a source without a publication are refused", () => {
    expect(found(lessonOf("See the [[tube]].\n\n### notes\nSee.[^nobody-1999]"))).toMatch(
      /glossary "tube"[\s\S]*sources "nobody-1999"/,
    );
  });
  test("grades follow the published formulas (Kincaid et al. 1975; McLaughlin 1969; Björnsson 1968)", () => {
    const grade = readingGrade("The cat sat on the mat. It was happy.");
    // 9 words, 2 sentences, 10 syllables, no word of three syllables or over six letters
    expect(grade.fleschKincaid).toBeCloseTo(0.39 * 4.5 + (11.8 * 10) / 9 - 15.59, 10);
    expect(grade.smog).toBeCloseTo(3.1291, 10);
    expect(grade.lix).toBeCloseTo(4.5, 10);
    expect(grade.wordsPerSentence).toBe(4.5);
  });
  test.each([
    ["sangre", 2],
    ["vía", 2],
    ["río", 2],
    ["aorta", 3],
    ["presión", 2],
    ["que", 1],
    ["rey", 1],
    ["y", 1],
    ["pingüino", 3],
    ["aurícula", 4],
    ["poeta", 3],
    ["ciudad", 2],
  ])("the Spanish word %s has %i syllables", (word, count) => {
    expect(spanishSyllables(word)).toBe(count);
  });
  test("Spanish is measured by Szigriszt-Pazos 1993", () => {
    // 6 words, 2 sentences, 11 syllables
    expect(readingGrade("La sangre sube. El tubo cuesta.").inflesz).toBeCloseTo(
      206.835 - (62.3 * 10) / 6 - 3,
      10,
    );
  });
  test.each([
    ["en", "It simply flows.", "simply"],
    ["es", "Lamentablemente cuesta.", "Lamentablemente"],
    ["fr", "Bien sûr, le sang coule.", "Bien sûr"],
    ["de", "Das kostet leider Druck.", "leider"],
    ["de-AT", "Natürlich fließt es.", "Natürlich"],
    ["en", "An adjustment of the justice.", null],
    ["de", "In einfachen Worten: die natürliche Leitung.", null],
  ])("in %s: %s", (language, text, banned) => {
    expect(notSaid(text, language)).toBe(banned);
  });
  test("every language of the lessons has its list of words not said", () => {
    const languages = readdirSync("lessons", { withFileTypes: true }).filter((entry) => entry.isDirectory());
    expect(LANGUAGES_WITH_WORDING.sort()).toEqual(languages.map(({ name }) => name).sort());
  });
  test("a text that is too hard is refused by each of its measures", () => {
    const faultsOf = (text: string, language: string) => {
      const { refuse, faults } = refuseIn("a.md");
      checkWhole(readingGrade(text), language, refuse);
      return faults.map(({ found: each }) => each).join("\n");
    };
    const hard = `${"Extraordinariamente desproporcionada incompatibilidad electrocardiográfica ".repeat(5)}.`;
    expect(faultsOf(hard, "es")).toMatch(/LIX [\s\S]*INFLESZ [\s\S]*words a sentence/);
    expect(faultsOf(hard, "fr")).not.toMatch(/INFLESZ/);
    expect(faultsOf("La sangre sube. El tubo cuesta.", "es")).toBe("");
  });
});

describe("pages that accompany the lessons", () => {
  const SOURCE = readPage("# About\n\n## Plain\n\nWords.\n", "about.md", "en", null).value!;
  const page = (
    of: string,
    rest = "date: 2026-01-01\nreviewed: false",
    sections = "## Claro\n\nPalabras.\n",
  ) =>
    readPage(
      `---\nof: ${of}\ntranslator: machine\n${rest}\n---\n\n# Sobre\n\n${sections}`,
      "es.md",
      "es",
      SOURCE,
    );
  test("a translation says of which text it is, and is out of date when that text has changed", () => {
    expect(page(SOURCE.version).value!.translation).toMatchObject({ reviewed: false, outOfDate: false });
    expect(page("v00000000").value!.translation!.outOfDate).toBe(true);
    const changed = readPage("# About\n\n## Plain\n\nOther words.\n", "about.md", "en", null).value!;
    expect(changed.version).not.toBe(SOURCE.version);
  });
  test("a translation without front matter, with an unknown key or a section short is refused with its line", () => {
    const faultsOf = ({ faults }: ReturnType<typeof readPage>) =>
      faults.map(({ path, found: each }) => `${path} ${each}`).join("\n");
    expect(faultsOf(readPage("# Sobre\n\n## Claro\n\nPalabras.\n", "es.md", "es", SOURCE))).toMatch(
      /es\.md:1 no front matter/,
    );
    expect(faultsOf(page(SOURCE.version, "date: 2026-01-01\nreviewd: false"))).toMatch(
      /es\.md:5 unknown key reviewd/,
    );
    expect(faultsOf(page(SOURCE.version, undefined, "## A\n\nB.\n\n## C\n\nD.\n"))).toMatch(/2 sections/);
  });
});

describe("translations", () => {
  const SOURCE = readLesson(
    lessonOf(
      "It takes {{ pathway.pressureDrop | mmHg 1 }}.",
      "kind: choose\nask: Which?\nanswers:\n  a: { say: A, because: Since., right: true }\n  b: { say: B, because: Since. }",
    ),
    "en.md",
  ).value!;
  const spanish = (change: (text: string) => string = (text) => text) =>
    readTranslation(
      change(`---
id: a-lesson
language: es
of: ${SOURCE.version}
title: T
reader: padres
aim: verlo
remember: Cuesta.
translator: machine
date: 2026-01-01
reviewed: false
---

## Uno {#one}

### plain
La sangre fluye.

## Dos {#two}

\`\`\`question
ask: ¿Cuál?
answers:
  a: { say: A, because: Porque. }
  b: { say: B, because: Porque. }
\`\`\`

### plain
Cuesta {{ pathway.pressureDrop | mmHg 1 }}.
`),
      "es.md",
      SOURCE,
    );
  const foundIn = (change: (text: string) => string) =>
    spanish(change)
      .faults.map(({ path, found: each }) => `${path} ${each}`)
      .join("\n");

  test("give words only: scene, answers and steps are the source's", () => {
    const { value, faults } = spanish();
    expect(faults).toEqual([]);
    expect(value!.steps[1]!.patch).toEqual(SOURCE.steps[1]!.patch);
    expect(value!.steps[1]!.question).toMatchObject({
      answers: [
        { id: "a", right: true },
        { id: "b", right: false },
      ],
    });
    expect(value!.translation).toEqual({
      translator: "machine",
      date: "2026-01-01",
      reviewed: false,
      outOfDate: false,
    });
  });

  test.each([
    [
      "a scene",
      (text: string) =>
        text.replace("### plain\nLa", "```scene\nset: { conduitDiameter: 30 }\n```\n\n### plain\nLa"),
      /a scene block/,
    ],
    [
      "another number",
      (text: string) => text.replace("mmHg 1", "mmHg 3"),
      /pathway\.pressureDrop \| mmHg 3[\s\S]*a number left out/,
    ],
    [
      "a right answer",
      (text: string) => text.replace("a: { say: A,", "a: { right: true, say: A,"),
      /unknown key answers\.a\.right/,
    ],
    ["another answer", (text: string) => text.replace("  b: {", "  c: {"), /a, c/],
    [
      "a step that is not there",
      (text: string) => text.replace("{#two}", "{#too}"),
      /step "too"[\s\S]*no step "two"/,
    ],
  ])("cannot bring %s", (_, change, pattern) => {
    expect(foundIn(change)).toMatch(pattern);
  });

  test("are out of date when the source's words change, not when its scene does", () => {
    const words = readLesson(lessonOf("It takes {{ pathway.pressureDrop | mmHg 1 }} now."), "en.md").value!;
    const scene = readLesson(
      lessonOf("It takes {{ pathway.pressureDrop | mmHg 1 }} now.", "", "set: { conduitDiameter: 14 }"),
      "en.md",
    ).value!;
    expect(words.version).not.toBe(SOURCE.version);
    expect(scene.version).toBe(words.version);
    // A number in YAML's eyes would be another version.
    expect(words.version).toMatch(/^v[0-9a-f]{8}$/);
    expect(spanish((text) => text.replace(SOURCE.version, "v00000000")).value!.translation!.outOfDate).toBe(
      true,
    );
  });
});

test("claims: rises and falls by more than 1 %, holds within 5 %, or as the text says", () => {
  const request = {
    kind: "circulation",
    stage: "extracardiac",
    body: CASES.caseA,
    volumeRule: "hold-output",
    set: { conduitDiameter: 20 },
  } as const;
  const other = { ...request, set: { conduitDiameter: 10 } };
  const situation = {
    own: { request, circulation: null },
    others: { previous: { request: other, circulation: null } },
  };
  const verdict = (text: string) => {
    const claims = parseClaims(text);
    if (!claims.ok) throw new Error(claims.found);
    return claims.value.map((claim) => judgeClaim(claim, situation).holds);
  };
  expect(verdict("set.conduitDiameter rises from previous; set.conduitDiameter falls from previous")).toEqual(
    [true, false],
  );
  expect(
    verdict(
      "set.conduitDiameter rises from previous by 90 %; set.conduitDiameter rises from previous by 110 %",
    ),
  ).toEqual([true, false]);
  expect(
    verdict(
      "set.conduitDiameter rises from: previous by 9; set.conduitDiameter holds from previous within 10",
    ),
  ).toEqual([true, true]);
  expect(verdict("set.conduitDiameter holds from previous; body.bsa holds from previous")).toEqual([
    false,
    true,
  ]);
  expect(verdict("pressures.pathway rises from previous")).toEqual([null]);
});

test("the schemas for editors know every parameter with its range, and refuse what the reader refuses", () => {
  const { scene } = lessonSchemas() as {
    scene: {
      additionalProperties: boolean;
      properties: Record<string, { properties?: Record<string, { anyOf?: unknown[] }> }>;
    };
  };
  expect(scene.additionalProperties).toBe(false);
  expect(scene.properties.set!.properties!.conduitDiameter!.anyOf).toEqual([
    { type: "number", minimum: 8, maximum: 30 },
    { const: "default" },
  ]);
  expect(JSON.parse(JSON.stringify(lessonSchemas()))).toEqual(lessonSchemas());
});

test("the schemas for editors are the file that `npm run -s lessons:check -- --schema` writes", () => {
  expect(JSON.parse(readFileSync("lessons/schema.json", "utf8"))).toEqual(lessonSchemas());
});

describe("bars of the course, each broken in one of the kit's own lessons", () => {
  const lessonFiles = readLessonFiles("lessons");
  const lesson = lessonFiles.lessons.en!.find(({ number }) => number === 6)!;
  const library = {
    glossary: lessonFiles.glossaries.en!,
    sources: lessonFiles.sources,
    lessons: lessonFiles.lessons.en!,
  };
  const faultsOf = (broken: Lesson) =>
    checkCourse(broken, checkLesson(broken, library, null))
      .map(({ found: each }) => each)
      .join("\n");
  test.each<[string, Partial<Lesson>, RegExp]>([
    ["too few steps", { steps: lesson.steps.slice(0, 7) }, /7 steps/],
    ["a speaker's notes in another language", { language: "de" }, /speaker notes in en/],
    ["too little recall", { recall: lesson.recall.slice(0, 2) }, /2 questions to recall/],
    [
      "no question of an earlier lesson",
      { recall: lesson.recall.map((each) => ({ ...each, lesson: null })) },
      /from an earlier lesson/,
    ],
    ["no friend to tell", { tell: null }, /tell a friend/],
    ["no caution", { steps: lesson.steps.map((step) => ({ ...step, caution: null })) }, /no caution/],
    [
      "long without a question",
      { steps: lesson.steps.map((step) => ({ ...step, question: null })) },
      /more than 4 steps of a lecture without a question/,
    ],
    ["no prediction", { steps: lesson.steps.map((step) => ({ ...step, question: null })) }, /no prediction/],
    [
      "no question for the room",
      { steps: lesson.steps.map((step) => ({ ...step, question: null })) },
      /the room/,
    ],
    [
      "a step without notes",
      { steps: lesson.steps.map((step) => ({ ...step, notes: null })) },
      /speaker notes/,
    ],
  ])("%s", (_, change, pattern) => {
    expect(faultsOf(lesson)).toBe("");
    expect(faultsOf({ ...lesson, ...change })).toMatch(pattern);
  });
});
