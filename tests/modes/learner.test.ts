import { readFileSync } from "node:fs";
import { expect, test } from "vitest";
import { t } from "../../src/i18n/index.ts";
import { readDraft } from "../../src/lesson/draft-check.ts";
import type { Lesson } from "../../src/lesson/lesson.ts";
import { type Attempt, NO_PROGRESS, withLesson } from "../../src/lesson/progress.ts";
import { readLesson } from "../../src/lesson/read.ts";
import { recordPage } from "../../src/modes/study/learner-record.ts";
import { solve } from "../../src/sim/circulation/solve.ts";
import { CAUTIONS } from "../../src/ui/cautions.tsx";

const file = "lessons/en/04-energy-loss.md";
const text = readFileSync(file, "utf8");
const lesson: Lesson = readLesson(text, file).value!;
const asked = lesson.steps.find(({ question }) => question?.kind === "predict")!;

test("U29 a learner's record carries all six cautions, version and date, and no mark of the learner's runs as markup", () => {
  const progress = withLesson(NO_PROGRESS, lesson.id, {
    step: asked.id,
    seen: [asked.id],
    finished: false,
    answers: {
      [asked.id]: {
        given: "rises",
        right: true,
        tries: 1,
        day: "2026-11-25",
        note: "<img src=x onerror=alert(1)>",
      },
    },
    recalled: {},
  });
  const page = recordPage(progress, [lesson], "2026-11-25T12:00:00Z", solve);
  for (const name of CAUTIONS) expect(page).toContain(t(`caution.${name}`).replace(/"/g, "&quot;"));
  expect(page).toContain("2026-11-25");
  expect(page).toContain(t("study.answer.fits"));
  expect(page).toContain("&lt;img src=x");
  expect(page).not.toContain("<img");
});

test("the record prints the numbers that the learner saw; one kept without them, what the model says", () => {
  const reported = (file: string, id: string, numbers?: Attempt["numbers"]) => {
    const one = readLesson(readFileSync(file, "utf8"), file).value!;
    const progress = withLesson(NO_PROGRESS, one.id, {
      step: id,
      seen: [],
      finished: false,
      answers: {
        [id]: { given: "x", right: null, tries: 1, day: "2026-11-25", ...(numbers && { numbers }) },
      },
      recalled: {},
    });
    return recordPage(progress, [one], "2026-11-25T12:00:00Z", solve);
  };
  const figure = "pathway.pressureDrop | mmHg 2";
  expect(reported(file, "one-mmhg", { [figure]: 7.684 })).toMatch(/takes only 7\.68\smmHg at rest/);
  expect(reported(file, "one-mmhg", { [figure]: [7.684, 6.1, 9.3] })).toMatch(
    /takes only 7\.68\smmHg \(6\.10 to 9\.30\) at rest/,
  );
  expect(reported(file, "one-mmhg")).toMatch(/takes only \d\.\d\d\smmHg \(\d\.\d\d to \d\.\d\d\) at rest/);
  expect(reported("lessons/en/06-fenestration.md", "opening-ask")).toMatch(/a hole of 4\smm\./);
});

test("a draft is read against the kit's glossary and sources; one that names its language translates the kit's lesson", () => {
  const library = { language: "en", lessons: [lesson], glossary: {}, sources: {}, pages: {}, faults: [] };
  expect(readDraft(text, library).faults.map(({ allowed }) => allowed)).toContain(
    "a key of the glossary file",
  );
  const translated = readDraft("---\nid: 04-energy-loss\nlanguage: es\n---\n", library);
  expect(translated.value).toBeNull();
  expect(translated.faults.map(({ found }) => found)).toContain("no translator");
});
