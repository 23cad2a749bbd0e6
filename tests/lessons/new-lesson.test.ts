import { readFileSync } from "node:fs";
import { expect, test } from "vitest";
import { checkDraft, readDraft } from "../../src/lesson/check/draft-check.ts";
import { solve } from "../../src/sim/circulation/solve.ts";

test.each(["", ".de", ".es", ".fr"])("the lesson%s that a new one begins with has no faults", (ending) => {
  const { value, faults } = readDraft(readFileSync(`lessons/new-lesson${ending}.md`, "utf8"), {
    glossary: {},
    sources: {},
    lessons: [],
  });
  expect(faults).toEqual([]);
  const checks = value ? [...checkDraft(value, solve)] : [];
  expect(checks.at(-1)).toEqual({ steps: 2, of: 2, faults: [] });
});
