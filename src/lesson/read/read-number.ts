/** A question for a typed number: its block, and a translation's words for it. */
import type * as v from "valibot";
import { present } from "../../sim/checked/present.ts";
import type { TRANSLATED_SCHEMAS } from "../format/question-schema.ts";
import type { ReadRecord } from "../format/yaml-record.ts";
import type { NumberQuestion, Question } from "../lesson.ts";
import { type RawOf, type Reading, readTolerance, readUnit, sameKeys } from "./question-reading.ts";
import { type Refuse, readInline } from "./read-prose.ts";

export function readNumber(raw: RawOf<"number">, reading: Reading): Question {
  const { words, expression, asked } = reading;
  return {
    kind: "number",
    ...asked,
    value: expression(raw.value, "value"),
    format: readUnit(raw.unit, reading),
    within: readTolerance(raw.within),
    mistakes: Object.entries(raw.mistakes).map(([id, mistake]) => ({
      id,
      say: words(mistake.say, "mistakes", id, "say"),
      value: expression(mistake.value, "mistakes", id, "value"),
      because: words(mistake.because, "mistakes", id, "because"),
    })),
    right: words(raw.right, "right"),
    wrong: words(raw.wrong, "wrong"),
    solution: raw.solution.map((line) => words(line, "solution")),
  };
}

export type TranslatedNumber = v.InferOutput<(typeof TRANSLATED_SCHEMAS)["number"]>;

export function translateNumber(
  question: NumberQuestion,
  { value: raw, lineOf }: ReadRecord<TranslatedNumber>,
  asked: Pick<Question, "ask" | "hints">,
  refuse: Refuse,
): Question | null {
  const words = (text: string, ...path: string[]) => readInline(text, lineOf(...path), refuse);
  const wanted = question.mistakes.map(({ id }) => id);
  if (!sameKeys(Object.keys(raw.mistakes), wanted)) {
    refuse(
      lineOf("mistakes"),
      Object.keys(raw.mistakes).join(", "),
      `the source's keys: ${wanted.join(", ")}`,
    );
    return null;
  }
  return {
    ...question,
    ...asked,
    mistakes: question.mistakes.map((mistake) => {
      const { say, because } = present(raw.mistakes[mistake.id]);
      return {
        ...mistake,
        say: words(say, "mistakes", mistake.id, "say"),
        because: words(because, "mistakes", mistake.id, "because"),
      };
    }),
    right: words(raw.right, "right"),
    wrong: words(raw.wrong, "wrong"),
    solution: raw.solution.map((line) => words(line, "solution")),
  };
}
