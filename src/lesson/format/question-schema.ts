/** What a question block may hold, by kind: the logic and words of a lesson, and the words alone of a translation. */
import * as v from "valibot";

/** A line of words; YAML reads a bare number as a number. */
export const words = v.pipe(
  v.union([v.string(), v.pipe(v.number(), v.transform(String))]),
  v.trim(),
  v.minLength(1),
);
const expression = v.union([v.string(), v.number(), v.boolean()]);
const key = v.pipe(
  v.string(),
  v.regex(/^[a-z][A-Za-z0-9-]*$/, "a key of letters, digits and hyphens that begins with a small letter"),
);

const asked = {
  ask: words,
  hints: v.optional(v.pipe(v.array(words), v.maxLength(5)), []),
  again: v.optional(v.pipe(v.number(), v.integer(), v.minValue(1), v.maxValue(20))),
  room: v.optional(v.boolean(), false),
};

const answer = v.strictObject({
  say: words,
  because: words,
  right: v.optional(expression, false),
  show: v.optional(v.string()),
});
const answers = v.pipe(
  v.record(key, answer),
  v.check((record) => Object.keys(record).length >= 2 && Object.keys(record).length <= 5, "2 to 5 answers"),
);

const choice = { ...asked, answers, scale: v.optional(v.array(v.string())) };

const tolerance = v.union(
  [v.number(), v.pipe(v.string(), v.regex(/^\d+(\.\d+)?\s*%$/))],
  "a number, or a number with %",
);
const solution = v.pipe(v.array(words), v.minLength(1), v.maxLength(12));

export const QUESTION_SCHEMAS = {
  predict: v.strictObject({ kind: v.literal("predict"), ...choice, reveal: v.optional(v.string()) }),
  choose: v.strictObject({ kind: v.literal("choose"), ...choice }),
  goal: v.strictObject({
    kind: v.literal("goal"),
    ...asked,
    control: v.string(),
    until: expression,
    best: v.optional(v.picklist(["smallest", "largest"])),
    within: v.optional(v.pipe(v.number(), v.minValue(0)), 0),
    reached: words,
    further: v.optional(words),
    missed: words,
  }),
  estimate: v.strictObject({
    kind: v.literal("estimate"),
    ...asked,
    of: expression,
    unit: v.string(),
    within: tolerance,
    close: words,
    low: words,
    high: words,
  }),
  number: v.strictObject({
    kind: v.literal("number"),
    ...asked,
    value: expression,
    unit: v.string(),
    within: tolerance,
    mistakes: v.pipe(
      v.record(key, v.strictObject({ say: words, value: expression, because: words })),
      v.check(
        (record) => Object.keys(record).length >= 1 && Object.keys(record).length <= 6,
        "1 to 6 mistakes",
      ),
    ),
    right: words,
    wrong: words,
    solution,
  }),
  order: v.strictObject({
    kind: v.literal("order"),
    ...asked,
    items: v.pipe(
      v.record(key, v.strictObject({ say: words, value: v.optional(expression) })),
      v.check((record) => Object.keys(record).length >= 2 && Object.keys(record).length <= 7, "2 to 7 items"),
    ),
    order: v.optional(v.array(v.string())),
    lowest: v.optional(v.boolean(), false),
    right: words,
    wrong: words,
  }),
} as const;

const translatedAnswers = v.record(key, v.strictObject({ say: words, because: words }));
const translated = { ask: words, hints: v.optional(v.array(words), []) };

/** A translation's question: words only, so that it cannot change what is asked of the model. */
export const TRANSLATED_SCHEMAS = {
  predict: v.strictObject({ ...translated, answers: translatedAnswers }),
  choose: v.strictObject({ ...translated, answers: translatedAnswers }),
  goal: v.strictObject({ ...translated, reached: words, further: v.optional(words), missed: words }),
  estimate: v.strictObject({ ...translated, close: words, low: words, high: words }),
  number: v.strictObject({
    ...translated,
    mistakes: v.record(key, v.strictObject({ say: words, because: words })),
    right: words,
    wrong: words,
    solution,
  }),
  order: v.strictObject({ ...translated, items: v.record(key, words), right: words, wrong: words }),
} as const;

export type QuestionKind = keyof typeof QUESTION_SCHEMAS;
export const QUESTION_KINDS = Object.keys(QUESTION_SCHEMAS) as QuestionKind[];
