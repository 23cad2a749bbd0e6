/** What a glossary's words and a list of publications hold, in the shared files and in a lesson of one's own. */
import * as v from "valibot";
import { words } from "./question-schema.ts";

const key = v.pipe(v.string(), v.regex(/^[a-z0-9]+(-[a-z0-9]+)*$/, "small letters, digits and hyphens"));

const entrySchema = v.strictObject({ term: words, plain: words, technical: v.optional(words) });
export const glossarySchema = v.record(key, entrySchema);
export type GlossaryEntry = v.InferOutput<typeof entrySchema>;
export type Glossary = Readonly<Record<string, GlossaryEntry>>;

/** How far a publication was read for this kit; "practice" = common practice, no source. */
export const DEPTHS_OF_READING = ["full", "abstract", "memory", "practice"] as const;
const sourceSchema = v.strictObject({
  authors: words,
  year: v.optional(v.pipe(v.number(), v.integer(), v.minValue(1600), v.maxValue(2100))),
  title: words,
  where: v.optional(words),
  doi: v.optional(v.pipe(v.string(), v.regex(/^10\.\d{4,9}\/\S+$/, "a DOI such as 10.1016/j.example.2024"))),
  url: v.optional(
    v.pipe(v.string(), v.regex(/^https:\/\/[^\s"'<>]+$/, "an address that begins with https://")),
  ),
  read: v.picklist(DEPTHS_OF_READING),
  language: v.optional(v.string()),
});
export const sourcesSchema = v.record(key, sourceSchema);
export type Source = v.InferOutput<typeof sourceSchema>;
export type Sources = Readonly<Record<string, Source>>;
