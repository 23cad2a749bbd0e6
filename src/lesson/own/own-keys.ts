/** Words and publications of one lesson among all others: their keys are made its own, so that none takes another's meaning. */
import type { Lesson } from "../lesson.ts";

/** No key of a shared file has two hyphens in a row. */
const ownKey = (lesson: string, key: string): string => `${lesson}--${key}`;

export function withOwnKeys(lesson: Lesson): Lesson {
  const { id, glossary, publications } = lesson;
  const words = Object.keys(glossary);
  const sources = Object.keys(publications);
  if (words.length + sources.length === 0) return lesson;
  const rename = (keys: readonly string[], key: string) => (keys.includes(key) ? ownKey(id, key) : key);
  const renamed = <T>(record: Readonly<Record<string, T>>): Record<string, T> =>
    Object.fromEntries(Object.entries(record).map(([key, value]) => [ownKey(id, key), value]));
  const walk = (value: unknown): unknown => {
    if (Array.isArray(value)) return value.map(walk);
    if (typeof value !== "object" || value === null) return value;
    const { kind, key } = value as { readonly kind?: unknown; readonly key?: unknown };
    const all = Object.fromEntries(Object.entries(value).map(([name, each]) => [name, walk(each)]));
    if (kind === "term") return { ...all, key: rename(words, String(key)) };
    return kind === "source" ? { ...all, key: rename(sources, String(key)) } : all;
  };
  return {
    ...lesson,
    steps: walk(lesson.steps) as Lesson["steps"],
    terms: lesson.terms.map((key) => rename(words, key)),
    sources: lesson.sources.map((key) => rename(sources, key)),
    glossary: renamed(glossary),
    publications: renamed(publications),
  };
}

/** The shared words and publications with those of these lessons. */
export function withOwnWords<
  L extends { readonly glossary: Lesson["glossary"]; readonly sources: Lesson["publications"] },
>(library: L, lessons: readonly Lesson[]): L {
  return {
    ...library,
    glossary: Object.assign(
      Object.create(null),
      library.glossary,
      ...lessons.map(({ glossary }) => glossary),
    ),
    sources: Object.assign(
      Object.create(null),
      library.sources,
      ...lessons.map(({ publications }) => publications),
    ),
  };
}
