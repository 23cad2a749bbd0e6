/** The shared files: glossary (one file per language) and publications (one file). */
import * as v from "valibot";
import { SHARED_LIMITS } from "./limits.ts";
import { words } from "./question-schema.ts";
import { type Reading, refuseIn } from "./read.ts";
import { readRecord } from "./yaml-record.ts";

const key = v.pipe(v.string(), v.regex(/^[a-z0-9]+(-[a-z0-9]+)*$/));

const entrySchema = v.strictObject({ term: words, plain: words, technical: v.optional(words) });
export const glossarySchema = v.record(key, entrySchema);
export type GlossaryEntry = v.InferOutput<typeof entrySchema>;
export type Glossary = Readonly<Record<string, GlossaryEntry>>;

/** How far a publication was read for this kit; "practice" = common practice, no source. */
const DEPTHS_OF_READING = ["full", "abstract", "memory", "practice"] as const;
const sourceSchema = v.strictObject({
  authors: words,
  year: v.optional(v.pipe(v.number(), v.integer(), v.minValue(1600), v.maxValue(2100))),
  title: words,
  where: v.optional(words),
  doi: v.optional(v.pipe(v.string(), v.regex(/^10\.\d{4,9}\/\S+$/))),
  url: v.optional(v.pipe(v.string(), v.regex(/^https:\/\/[^\s"'<>]+$/))),
  read: v.picklist(DEPTHS_OF_READING),
  language: v.optional(v.string()),
});
export const sourcesSchema = v.record(key, sourceSchema);
export type Source = v.InferOutput<typeof sourceSchema>;
export type Sources = Readonly<Record<string, Source>>;

export const readGlossary = (text: string, file: string): Reading<Glossary> =>
  read(text, file, glossarySchema);
export const readSources = (text: string, file: string): Reading<Sources> => read(text, file, sourcesSchema);

function read<S extends v.GenericSchema>(text: string, file: string, schema: S): Reading<v.InferOutput<S>> {
  const { refuse, faults } = refuseIn(file);
  const record = readRecord(text, 1, schema, refuse, SHARED_LIMITS);
  // Without a prototype: a lesson that names "constructor" finds nothing.
  const value = record && (Object.assign(Object.create(null), record.value) as v.InferOutput<S>);
  return { value, faults };
}
