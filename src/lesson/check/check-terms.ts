/** A language's termbase: which term stands for a thing, and which words must not. Holds what families read, and the glossary, to it. */
import * as v from "valibot";
import type { Fault } from "../../sim/faults.ts";
import { SHARED_LIMITS } from "../format/limits.ts";
import { readRecord } from "../format/yaml-record.ts";
import type { Lesson } from "../lesson.ts";
import type { Glossary } from "../library/glossary.ts";
import { wordsOf } from "../prose.ts";
import { type Reading, refuseIn } from "../read/read.ts";
import type { Page } from "../read/read-page.ts";
import type { Refuse } from "../read/read-prose.ts";
import { familyTexts } from "./check-text.ts";

const text = v.pipe(v.string(), v.trim(), v.minLength(1));
const key = v.pipe(v.string(), v.regex(/^[a-z0-9]+(-[a-z0-9]+)*$/));
/** A key of the glossary names that entry: its term is `use`. `not`: words refused, `*` for any ending. */
const termSchema = v.strictObject({
  use: text,
  not: v.optional(v.pipe(v.array(text), v.minLength(1))),
  because: v.optional(text),
});
const termsSchema = v.record(key, termSchema);
export type Terms = Readonly<Record<string, v.InferOutput<typeof termSchema>>>;

export function readTerms(written: string, file: string): Reading<Terms> {
  const { refuse, faults } = refuseIn(file);
  return { value: readRecord(written, 1, termsSchema, refuse, SHARED_LIMITS)?.value ?? null, faults };
}

export const glossaryTermFaults = (glossary: Glossary, terms: Terms, file: string): readonly Fault[] =>
  Object.entries(terms).flatMap(([name, { use }]) => {
    const entry = Object.hasOwn(glossary, name) ? glossary[name] : undefined;
    return entry && entry.term !== use
      ? [
          {
            path: `${file}:1`,
            found: `term "${entry.term}" of ${name}`,
            allowed: `"${use}", as in terms.yaml`,
          },
        ]
      : [];
  });

export function lessonTermFaults(lesson: Lesson, terms: Terms): readonly Fault[] {
  const { refuse, faults } = refuseIn(lesson.file);
  refuseWords([lesson.title, lesson.aim, lesson.remember, lesson.tell ?? ""], 1, terms, refuse);
  for (const step of lesson.steps)
    refuseWords(
      [step.title, ...familyTexts(step), step.caution ? wordsOf(step.caution.prose) : ""],
      step.plain.line,
      terms,
      refuse,
    );
  return faults;
}

/** A page's first section is for families. */
export function pageTermFaults(page: Page, terms: Terms, file: string): readonly Fault[] {
  const { refuse, faults } = refuseIn(file);
  refuseWords([page.title, wordsOf(page.sections[0]?.prose ?? [])], 1, terms, refuse);
  return faults;
}

function refuseWords(texts: readonly string[], line: number, terms: Terms, refuse: Refuse): void {
  const said = texts.join("\n");
  for (const { use, not = [], because } of Object.values(terms))
    for (const words of not) {
      const match = patternOf(words).exec(said);
      if (match) refuse(line, `"${match[0]}"`, because ? `${use} (${because})` : use);
    }
}

/** Whole words, any case; `*` at a word's end stands for its endings. */
const patternOf = (words: string): RegExp =>
  new RegExp(
    `(?<!\\p{L})${words
      .split("*")
      .map((part) => part.replace(/[.+?^${}()|[\]\\]/g, "\\$&").replace(/\s+/g, "\\s+"))
      .join("\\p{L}*")}(?!\\p{L})`,
    "iu",
  );
