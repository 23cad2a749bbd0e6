import { describe, expect, test } from "vitest";
import { readOwn } from "../../../../src/lesson/own/read-own.ts";
import { asFiles, lessonFileText, servedLessons } from "../../../../src/modes/shared/own/own-lessons.ts";
import { describeFault } from "../../../../src/sim/faults.ts";

const served = (files: Record<string, string | Response>) => async (url: string) => {
  const found = files[url];
  if (found === undefined) return new Response("none", { status: 404 });
  return typeof found === "string"
    ? new Response(found, { headers: { "content-type": "application/json" } })
    : found;
};

describe("the folder own of a served kit", () => {
  test("gives the lessons that its index names", async () => {
    const files = { "own/index.json": '{ "lessons": ["a.md", "b.md"] }', "own/a.md": "A" };
    const { files: found, faults } = await servedLessons(served(files));
    expect(found).toEqual([{ file: "own/a.md", text: "A" }]);
    expect(faults.map(describeFault)).toEqual([
      "own/b.md:1: found no text; allowed: a text of at most 200000 characters",
    ]);
  });

  test("gives none where there is no index, or a page in its place", async () => {
    const page = new Response("<!doctype html>", { headers: { "content-type": "text/html" } });
    for (const files of [{}, { "own/index.json": page }])
      expect(await servedLessons(served(files))).toEqual({ files: [], faults: [] });
  });

  test("gives none and says so where the index is no list of names in it", async () => {
    for (const files of [
      { "own/index.json": "not JSON" },
      { "own/index.json": '["a.md"]', "own/a.md": "x" },
      { "own/index.json": '{ "lessons": ["../secret.md"] }', "own/../secret.md": "x" },
      { "own/index.json": '{ "lessons": ["https://example.org/x.md"] }' },
    ]) {
      const { files: found, faults } = await servedLessons(served(files));
      expect([found, faults.map(({ path }) => path)]).toEqual([[], ["own/index.json:1"]]);
    }
  });

  test("passes over a file beyond the limit and a network that fails", async () => {
    const files = { "own/index.json": '{ "lessons": ["a.md"] }', "own/a.md": "x".repeat(200_001) };
    expect((await servedLessons(served(files))).files).toEqual([]);
    const none = { files: [], faults: [] };
    expect(await servedLessons(async () => Promise.reject(new TypeError("no network")))).toEqual(none);
  });
});

const lesson = (id: string) =>
  `---\nid: ${id}\nnumber: 90\ntitle: T\nreader: r\naim: a\nremember: m\nminutes: 1\n---\n\n## One {#one}\n\n### plain\nWords.\n`;

describe("own lessons beside the kit's", () => {
  test("are files with a name each, though two of them are called the same", () => {
    const named = ["New lesson", "New lesson 2", "New lesson"].map((name, index) => ({
      name,
      text: `${index}`,
    }));
    expect(asFiles(named)).toEqual([
      { file: "New lesson.md", text: "0" },
      { file: "New lesson 2.md", text: "1" },
      { file: "New lesson 3.md", text: "2" },
    ]);
  });

  test("keep the kit's ids free, and one that cannot be read takes no other with it", () => {
    const files = [
      { file: "a.md", text: lesson("mine") },
      { file: "b.md", text: "no lesson" },
      { file: "c.md", text: lesson("01-two-jobs") },
      { file: "d.md", text: lesson("mine") },
    ];
    const { lessons, faults } = readOwn(files, new Set(["01-two-jobs"]));
    expect(lessons.map(({ file }) => file)).toEqual(["a.md"]);
    expect(faults.map(({ path }) => path)).toEqual(["b.md:1", "c.md:1", "d.md:1"]);
  });

  test("have the language that they name", () => {
    const text = lesson("meine").replace("title: T", "title: T\nlanguage: de");
    const [read] = readOwn([{ file: "m.md", text }], new Set()).lessons;
    expect([read?.language, read?.steps[0]?.plain.language]).toEqual(["de", "de"]);
  });

  test("a file that can be no lesson is not taken", async () => {
    expect(await lessonFileText(new File(["words"], "a.md"))).toBe("words");
    expect(await lessonFileText(new File(["words"], "lesson"))).toBe("words");
    expect(await lessonFileText(new File(["x\0y"], "a.md"))).toBeNull();
    for (const name of ["a.png", "talk.zip", "progress.json", "a.md.pdf"])
      expect(await lessonFileText(new File(["words"], name)), name).toBeNull();
    expect(await lessonFileText(new File(["x".repeat(500_001)], "a.md"))).toBeNull();
  });
});
