/** Limits on a lesson's text that need no model: how much is shown at once, how hard it is to read, words not used with families. */

import { entryAt } from "../../sim/checked/present.ts";
import type { Lesson, Step } from "../lesson.ts";
import { countWords, firstOf, type Prose, wordsOf } from "../prose.ts";
import type { Page } from "../read/read-page.ts";
import type { Refuse } from "../read/read-prose.ts";
import { wordsIn } from "../read/references.ts";
import { type ReadingGrade, readingGrade } from "./reading-grade.ts";
import { notSaid } from "./wording.ts";

/** Words shown at once: a lecture's script, a kiosk's two paragraphs. */
const MAX_WORDS = { script: 25, kiosk: 40 } as const;
const HARDEST = { grade: 8, sentence: 20, meanSentence: 15, lix: 40, inflesz: 55 } as const;
/** A typed result; sizes that are set (mm, years) may be typed. */
const TYPED_NUMBER = /\d+(?:[.,]\d+)?\s*(?:mmHg|L\/min|mW|WU|%)/;

/** What a family reads in this step: its words, and the question's. */
export const familyTexts = (step: Step): readonly string[] => [
  wordsOf(step.plain.prose),
  ...(step.question
    ? [
        wordsIn(step.question)
          .map((words) => wordsOf(words))
          .join("\n"),
      ]
    : []),
];

/** Grades of the steps' plain words alone: a question's short answers would flatter them. */
export function checkText(lesson: Lesson, refuse: Refuse): readonly ReadingGrade[] {
  return lesson.steps.map((step) => {
    checkAmount(step.plain.prose, step.plain.line, refuse);
    if (step.technical) {
      const script = countWords(wordsOf(firstOf(step.technical.prose, 1)));
      if (script > MAX_WORDS.script) {
        refuse(step.technical.line, `${script} words in the technical script`, `at most ${MAX_WORDS.script}`);
      }
    }
    const asked = step.question?.room ? countWords(wordsOf(step.question.ask)) : 0;
    if (asked > MAX_WORDS.script)
      refuse(step.line, `${asked} words asked of the room`, `at most ${MAX_WORDS.script}`);
    const grades = familyTexts(step).map(readingGrade);
    for (const grade of grades) checkGrade(lesson, step, grade, refuse);
    checkWording(lesson, step, refuse);
    return entryAt(grades, 0);
  });
}

function checkAmount(prose: Prose, line: number, refuse: Refuse): void {
  const [first = 0, second = 0] = firstOf(prose, 2)
    .filter(({ kind }) => kind !== "picture")
    .map((block) => countWords(wordsOf([block])));
  if (first > MAX_WORDS.script) refuse(line, `${first} words in the script`, `at most ${MAX_WORDS.script}`);
  else if (first + second > MAX_WORDS.kiosk) {
    refuse(line, `${first + second} words in the first two paragraphs`, `at most ${MAX_WORDS.kiosk}`);
  }
}

function checkGrade(lesson: Lesson, step: Step, grade: ReadingGrade, refuse: Refuse): void {
  if (grade.longestSentence > HARDEST.sentence) {
    refuse(step.plain.line, `a sentence of ${grade.longestSentence} words`, `at most ${HARDEST.sentence}`);
  }
  if (lesson.language === "en" && grade.fleschKincaid > HARDEST.grade) {
    refuse(
      step.plain.line,
      `reading grade ${grade.fleschKincaid.toFixed(1)} in step "${step.id}"`,
      `at most ${HARDEST.grade} (Flesch-Kincaid): shorter words and sentences`,
    );
  }
}

/** A whole text's measures: LIX for all, INFLESZ for Spanish, mean length of a sentence. */
export function checkWhole(grade: ReadingGrade, language: string, refuse: Refuse): void {
  const { lix, inflesz, wordsPerSentence } = grade;
  const shorter = "shorter words and sentences";
  if (lix > HARDEST.lix) refuse(1, `LIX ${lix.toFixed(0)}`, `at most ${HARDEST.lix}: ${shorter}`);
  if (/^es\b/.test(language) && inflesz < HARDEST.inflesz)
    refuse(1, `INFLESZ ${inflesz.toFixed(0)}`, `at least ${HARDEST.inflesz}: ${shorter}`);
  if (wordsPerSentence > HARDEST.meanSentence)
    refuse(
      1,
      `${wordsPerSentence.toFixed(1)} words a sentence`,
      `at most ${HARDEST.meanSentence} in the mean`,
    );
}

/** A page's first section is for families. */
export function checkPage(page: Page, refuse: Refuse): void {
  const text = wordsOf(page.sections[0]?.prose ?? []);
  checkWhole(readingGrade(text), page.language, refuse);
  const banned = notSaid(text, page.language);
  if (banned) refuse(1, `"${banned}"`, "plain words that do not talk down");
}

function checkWording(lesson: Lesson, step: Step, refuse: Refuse): void {
  const text = [...familyTexts(step), step.caution ? wordsOf(step.caution.prose) : ""].join("\n");
  const typed = TYPED_NUMBER.exec(
    [step.plain.prose, ...(step.question ? wordsIn(step.question) : [])]
      .map((content) => wordsOf(content, () => "\u2026"))
      .join("\n"),
  );
  if (typed)
    refuse(step.plain.line, `a typed number, "${typed[0]}", in step "${step.id}"`, "a live number in {{ }}");
  const banned = notSaid(text, lesson.language);
  if (banned)
    refuse(step.plain.line, `"${banned}" in step "${step.id}"`, "plain words that do not talk down");
  const script = wordsOf(step.plain.prose.slice(0, 1)).trim();
  if (step.notes && script && wordsOf(step.notes.prose).includes(script)) {
    refuse(
      step.notes.line,
      "the script again",
      "notes that say it in other words: the room reads the script itself",
    );
  }
}
