import { expect, test } from "vitest";
import { checkLibrary, type Library } from "../../../src/lesson/check/check-library.ts";
import { withOwnWords } from "../../../src/lesson/own/own-keys.ts";
import { inlinesOf } from "../../../src/lesson/prose.ts";
import { readLesson, refuseIn } from "../../../src/lesson/read/read.ts";

const lessonOf = (id: string, meaning: string) => `---
id: ${id}
number: 90
title: Ours
reader: parents
aim: see it
remember: Narrow costs.
minutes: 3
terms: [kink]
sources: [our-leaflet]
glossary:
  kink: { term: kink, plain: ${meaning} }
publications:
  our-leaflet: { authors: The ward, title: Our leaflet, read: practice }
---

## Wide {#wide}

### plain
A [[kink]] and [[pressure]].

### notes
As we say[^our-leaflet].
`;
const KIT: Library = {
  glossary: { kink: { term: "kink", plain: "The kit's." }, pressure: { term: "pressure", plain: "Push." } },
  sources: {},
  lessons: [],
};

test("two lessons explain one word each in its own way, and the kit's words stay", () => {
  const [first, second] = [lessonOf("one", "A bend."), lessonOf("two", "A fold.")].map(
    (text) => readLesson(text, "x.md").value!,
  );
  const { glossary, sources } = withOwnWords(KIT, [first!, second!]);
  const meant = (lesson: typeof first) =>
    [...inlinesOf(lesson!.steps[0]!.plain.prose)].flatMap((node) =>
      node.kind === "term" ? [glossary[node.key]?.plain] : [],
    );
  expect([meant(first), meant(second)]).toEqual([
    ["A bend.", "Push."],
    ["A fold.", "Push."],
  ]);
  expect(glossary.kink?.plain).toBe("The kit's.");
  expect(first!.terms.map((key) => glossary[key]?.plain)).toEqual(["A bend."]);
  expect(second!.sources.map((key) => sources[key]?.title)).toEqual(["Our leaflet"]);
});

test("a key that is neither the kit's nor the lesson's is refused, and what is told of a word too", () => {
  const faultsOf = (text: string) => {
    const { value, faults } = readLesson(text, "x.md");
    const { refuse, faults: further } = refuseIn("x.md");
    if (value) checkLibrary(value, KIT, refuse);
    return [...faults, ...further].map(({ path, found, allowed }) => `${path} ${found} | ${allowed}`);
  };
  const text = lessonOf("one", "A bend.");
  expect(faultsOf(text)).toEqual([]);
  expect(faultsOf(text.replace("A [[kink]]", "A [[kinc]]"))).toEqual([
    'x.md:20 glossary "kinc" | a key of the glossary file; nearest: kink',
  ]);
  expect(faultsOf(text.replace("read: practice", "read: yes"))).toEqual([
    'x.md:14 publications.our-leaflet.read: "yes" | full, abstract, memory, practice',
  ]);
});
