import { expect, test } from "vitest";
import { readLessonFiles } from "../../../src/cli/lesson-files.ts";
import { loadLibrary } from "../../../src/lesson/library/library.ts";

const files = readLessonFiles("lessons");

test.each(Object.keys(files.lessons))(
  "the library in %s holds what the readers make of its files",
  async (language) => {
    const library = await loadLibrary(language);
    expect(library.faults).toEqual([]);
    expect(library.lessons.length).toBeGreaterThan(10);
    expect(library.lessons).toEqual(files.lessons[language]);
    expect(library.glossary).toEqual({ ...files.glossaries.en, ...files.glossaries[language] });
    expect(library.pages).toEqual(files.pages[language]);
    expect(library.sources).toEqual(files.sources);
  },
);

test("a language without lessons gets the English ones", async () => {
  const [other, english] = await Promise.all([loadLibrary("pt"), loadLibrary("en")]);
  expect(other.lessons).toEqual(english.lessons);
  expect(other.language).toBe("pt");
});

test("a key that every object has is none of the library", async () => {
  const { glossary, sources, pages } = await loadLibrary("en");
  for (const each of [glossary, sources, pages]) expect("constructor" in each).toBe(false);
});
