/** The shared files: glossary (one file per language) and publications (one file). */
import type * as v from "valibot";
import { type Glossary, glossarySchema, type Sources, sourcesSchema } from "../format/glossary-schema.ts";
import { SHARED_LIMITS } from "../format/limits.ts";
import { readRecord } from "../format/yaml-record.ts";
import { type Reading, refuseIn } from "../read/read.ts";

export type { Glossary, GlossaryEntry, Source, Sources } from "../format/glossary-schema.ts";

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
