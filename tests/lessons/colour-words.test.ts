/** Words and picture agree: blood is called blue or red only where the picture colours it by its oxygen. */
import { expect, test } from "vitest";
import { readLessonFiles } from "../../src/cli/lesson-files.ts";
import { stepState } from "../../src/lesson/model/states.ts";
import { wordsOf } from "../../src/lesson/prose.ts";
import { wordsIn } from "../../src/lesson/read/references.ts";

/** Blood with its colour, whichever word comes first; lips, paint and skin are no picture. */
const COLOURED_BLOOD: Readonly<Record<string, RegExp>> = {
  en: /\b(blue|red)\s+blood\b/i,
  de: /\b(blau|rot)es\s+Blut\b/i,
  es: /\bsangre\s+(azul|roja)/i,
  fr: /\bsang\s+(bleu|rouge)/i,
};

const steps = Object.entries(readLessonFiles("lessons").lessons).flatMap(([language, lessons]) =>
  lessons.flatMap((lesson) =>
    lesson.steps.map((step, index) => ({
      name: `${language} ${lesson.id} ${step.id}`,
      language,
      colouring: stepState(lesson, index).view.colouring,
      words: [step.plain.prose, ...(step.question ? wordsIn(step.question) : [])]
        .map((each) => wordsOf(each))
        .join("\n"),
    })),
  ),
);

test("in every language some step speaks of blue or red blood, else the patterns look for nothing", () => {
  for (const [language, pattern] of Object.entries(COLOURED_BLOOD))
    expect(
      steps.some((step) => step.language === language && pattern.test(step.words)),
      language,
    ).toBe(true);
});

test.each(steps.filter(({ language, words }) => COLOURED_BLOOD[language]?.test(words)))(
  "$name speaks of blood's colour and shows it",
  ({ colouring }) => {
    expect(colouring).toBe("oxygen");
  },
);
