/** The settings at the top of a lesson file. */
import * as v from "valibot";
import { glossarySchema, sourcesSchema } from "./glossary-schema.ts";
import { words } from "./question-schema.ts";
import { patchSchema } from "./scene-patch.ts";

const id = v.pipe(v.string(), v.regex(/^[a-z0-9]+(-[a-z0-9]+)*$/, "small letters, digits and hyphens"));

const level = v.pipe(v.array(words), v.minLength(1), v.maxLength(3));
const goals = v.optional(v.strictObject({ plain: level, technical: level }));
const language = v.pipe(
  v.string(),
  v.regex(/^[A-Za-z]{2,3}(-[A-Za-z0-9]{2,8})*$/, "a language tag (BCP 47) such as de, es, fr, pt-BR"),
);

export const frontSchema = v.strictObject({
  id,
  /** BCP 47 tag of a lesson of one's own; the kit's are in English. */
  language: v.optional(language),
  number: v.pipe(v.number(), v.integer(), v.minValue(1)),
  title: words,
  reader: words,
  aim: words,
  remember: words,
  goals,
  minutes: v.pipe(v.number(), v.minValue(1), v.maxValue(120)),
  terms: v.optional(v.pipe(v.array(v.string()), v.maxLength(3)), []),
  sources: v.optional(v.array(v.string()), []),
  start: v.optional(patchSchema, {}),
  states: v.optional(
    v.record(v.pipe(v.string(), v.regex(/^[A-Za-z][A-Za-z0-9]*$/, "letters and digits")), patchSchema),
    {},
  ),
  recall: v.optional(v.array(v.string()), []),
  tell: v.optional(words),
  /** Words and publications of this lesson alone, for a lesson of one's own. */
  glossary: v.optional(glossarySchema, {}),
  publications: v.optional(sourcesSchema, {}),
});

/** Who made a translation, when and from which source text, and whether a native-speaking clinician has read it. */
const made = {
  of: v.string(),
  translator: words,
  date: v.pipe(v.string(), v.regex(/^\d{4}-\d{2}-\d{2}$/, "a day such as 2026-11-25")),
  reviewed: v.boolean(),
  /** A role is enough: "paediatric cardiologist". */
  reviewer: v.optional(words),
};

export const pageFrontSchema = v.strictObject(made);

export const translatedFrontSchema = v.strictObject({
  id,
  language,
  title: words,
  reader: words,
  aim: words,
  remember: words,
  goals,
  tell: v.optional(words),
  ...made,
});
