import { readFileSync } from "node:fs";
import { expect, test } from "vitest";
import { t } from "../../../src/i18n/index.ts";
import { readDraft } from "../../../src/lesson/check/draft-check.ts";
import type { Lesson } from "../../../src/lesson/lesson.ts";
import {
  type Attempt,
  NO_PROGRESS,
  type Progress,
  withLesson,
} from "../../../src/lesson/progress/progress.ts";
import { wordsOf } from "../../../src/lesson/prose.ts";
import { readLesson } from "../../../src/lesson/read/read.ts";
import { checkRecord } from "../../../src/modes/study/record-checksum.ts";
import { recordPage } from "../../../src/modes/study/record-page.ts";
import { solve } from "../../../src/sim/circulation/solve.ts";
import { CAUTIONS } from "../../../src/ui/cautions.tsx";

const file = "lessons/en/04-energy-loss.md";
const text = readFileSync(file, "utf8");
const lesson: Lesson = readLesson(text, file).value!;
const asked = lesson.steps.find(({ question }) => question?.kind === "predict")!;

const saved = (progress: Progress, lessons: readonly Lesson[], name = "") =>
  recordPage({ progress, lessons, date: "2026-11-25T12:00:00Z", answered: solve, name });
const answered = (one: Lesson, answers: Record<string, Attempt>): Progress =>
  withLesson(NO_PROGRESS, one.id, { step: "", seen: [], finished: false, answers, recalled: {} });
const once = { tries: 1, day: "2026-11-25" };
/** The definition list of the question that begins with these words. */
const itemOf = (page: string, words: string) =>
  (page.split("<li><strong>").find((item) => item.startsWith(words)) ?? "")
    .replace(/<\/dt><dd>/g, ": ")
    .split(/<[^>]+>/);

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
  const page = saved(progress, [lesson]);
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
    return saved(progress, [one]);
  };
  const figure = "pathway.pressureDrop | mmHg 2";
  expect(reported(file, "one-mmhg", { [figure]: 7.684 })).toMatch(/takes only 7\.68\smmHg at rest/);
  expect(reported(file, "one-mmhg", { [figure]: [7.684, 6.1, 9.3] })).toMatch(
    /takes only 7\.68\smmHg \(6\.10 to 9\.30\) at rest/,
  );
  expect(reported(file, "one-mmhg")).toMatch(/takes only \d\.\d\d\smmHg \(\d\.\d\d to \d\.\d\d\) at rest/);
  expect(reported("lessons/en/06-fenestration.md", "opening-ask")).toMatch(/a hole of 4\smm\./);
});

test("per question the record says what was answered and what is right: kept with the answer, else by the model", () => {
  const step = lesson.steps.find(({ id }) => id === "narrow-ask")!;
  const asked = step.question!;
  if (asked.kind !== "predict") throw new Error("a prediction");
  const say = (id: string) => wordsOf(asked.answers.find((each) => each.id === id)!.say);
  const wrong = { given: "same", right: false, ...once };
  const words = wordsOf(asked.ask, () => "").slice(0, 12);
  const byModel = itemOf(saved(answered(lesson, { [step.id]: wrong }), [lesson]), words);
  expect(byModel).toContain(`${t("study.record.given")}: ${say("same")}`);
  expect(byModel).toContain(`${t("study.record.right")}: ${say("rises")}`);
  const kept = itemOf(saved(answered(lesson, { [step.id]: { ...wrong, truth: "falls" } }), [lesson]), words);
  expect(kept).toContain(`${t("study.record.right")}: ${say("falls")}`);
  const right = itemOf(saved(answered(lesson, { [step.id]: { ...wrong, right: true } }), [lesson]), words);
  expect(right.join()).not.toContain(t("study.record.right"));
});

test("the name stands in the page and the checksum notices a changed word, not changed line ends", () => {
  const page = saved(answered(lesson, {}), [lesson], "Case <A>");
  expect(page).toContain(`<dt>${t("study.record.name")}</dt><dd>Case &lt;A&gt;</dd>`);
  expect(saved(answered(lesson, {}), [lesson])).not.toContain(t("study.record.name"));
  expect(checkRecord(page)).toBe("unchanged");
  expect(checkRecord(page.replace(/\n/g, "\r\n"))).toBe("unchanged");
  expect(checkRecord(page.replace("Case", "Cast"))).toBe("changed");
  expect(checkRecord(page.replace(/Checksum [\da-f-]+/, ""))).toBe("unknown");
  expect(checkRecord("<main>")).toBe("unknown");
});

test.each([
  ["words before what is read", "<main>", "<p>All right.</p><main>"],
  ["words after it", "</main>", "</main><p>All right.</p>"],
  ["a style that hides words", "</style>", "dd{display:none}</style>"],
  ["the title", "<title>", "<title>Another "],
  ["the foot's words", "<footer>", "<footer><p><strong>Checksum 1234-abcd.</strong></p>"],
  ["a script", "</html>", "<script>document.body.textContent = 1</script></html>"],
])("the checksum notices an edit anywhere in the page: %s", (_, found, edited) => {
  const page = saved(answered(lesson, {}), [lesson], "Case A");
  expect(page).toContain(found);
  expect(checkRecord(page.replace(found, edited))).toBe("changed");
});

test("a name that looks like a checksum, or a file saved with a mark and a line more, changes nothing", () => {
  const page = saved(answered(lesson, {}), [lesson], "dead-beef 0000-0000");
  expect(checkRecord(page)).toBe("unchanged");
  expect(checkRecord(`\ufeff${page}\n`)).toBe("unchanged");
  expect(checkRecord(page.replace("dead-beef", "dead-bee5"))).toBe("changed");
});

test("a draft is read against the kit's glossary and sources; one that names its language translates the kit's lesson", () => {
  const library = { language: "en", lessons: [lesson], glossary: {}, sources: {}, pages: {}, faults: [] };
  expect(readDraft(text, library).faults.map(({ allowed }) => allowed)).toContain(
    "a key of the glossary file, or of the lesson's own",
  );
  const translated = readDraft("---\nid: 04-energy-loss\nlanguage: es\n---\n", library);
  expect(translated.value).toBeNull();
  expect(translated.faults.map(({ found }) => found)).toContain("no translator");
});
