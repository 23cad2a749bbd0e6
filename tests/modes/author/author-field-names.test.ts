import { expect, test } from "vitest";
import { namesOfOwnWords } from "../../../src/modes/author/form/own-words.tsx";
import { namesWithin } from "../../../src/modes/author/form/question-table.ts";

test("only what an entry has a field for is told there: a key that it does not know is told with the block", () => {
  expect(namesWithin("answers", { a: { say: "A", colour: "red" } })).toEqual(
    ["", ".say", ".because", ".show", ".right"].map((field) => `question.answers.a${field}`),
  );
  expect(namesWithin("hints", ["Look."])).toEqual(["question.hints.0"]);
  expect(namesWithin("items", null)).toEqual([]);
});

test("so it is for the lesson's own words and publications", () => {
  const kink = { term: "kink", colour: "red" };
  expect(namesOfOwnWords({ glossary: { kink }, publications: { ours: {} } })).toEqual([
    "front.glossary",
    ...["", ".term", ".plain", ".technical"].map((field) => `front.glossary.kink${field}`),
    "front.publications",
    ...["", ".authors", ".year", ".title", ".where", ".doi", ".url", ".read"].map(
      (field) => `front.publications.ours${field}`,
    ),
  ]);
});
