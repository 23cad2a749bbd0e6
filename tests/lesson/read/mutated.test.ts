import { readdirSync, readFileSync } from "node:fs";
import fc from "fast-check";
import { expect, test } from "vitest";
import { stepState } from "../../../src/lesson/model/states.ts";
import { readLesson } from "../../../src/lesson/read/read.ts";

const FOLDER = new URL("../../../lessons/en/", import.meta.url);
const WHOLE = readdirSync(FOLDER)
  .filter((name) => name.endsWith(".md"))
  .map((name) => readFileSync(new URL(name, FOLDER), "utf8"));
const GUIDE = readFileSync(new URL("../../../docs/authoring.md", import.meta.url), "utf8");
/** The guide's example again and again: small, so that most of the mutations are quick and half of them are accepted. */
const LESSONS = [
  ...WHOLE,
  ...Array<string>(3 * WHOLE.length).fill(/````markdown\n([\s\S]*?)````/.exec(GUIDE)![1]!),
];

const NASTY = [
  "---",
  "```",
  "```scene",
  "## ",
  "### ",
  "{{",
  "}}",
  "[[",
  "]]",
  "](",
  "]{claim:",
  "$$",
  "$",
  "|",
  "&a *a",
  "<<: *x",
  "!!js/function",
  "\t",
  "\u0000",
  "__proto__",
  "constructor",
  "{{ constructor.constructor | mmHg 1 }}",
  "{{ 1 constructor 2 | mmHg 1 }}",
  "{{ __proto__.x | toString 1 }}",
  "[x]{claim: constructor rises from valueOf}",
  "[[constructor]]",
  "[^constructor]",
  "{#constructor}",
  "<script>",
  "javascript:",
  "set: {",
  "- ",
  ": ",
  "null",
  "1e999",
  "NaN",
  "\r",
  "\uFEFF",
  "\uD800",
  "((((((((",
  "[[[[[[[[[[",
];

const mutation = fc.record({
  lesson: fc.nat(LESSONS.length - 1),
  edits: fc.array(
    fc.record({
      at: fc.double({ min: 0, max: 1, noNaN: true }),
      drop: fc.nat(60),
      put: fc.oneof(
        fc.constantFrom(...NASTY),
        fc.string({ maxLength: 12 }),
        fc.constantFrom(...NASTY).map((text) => text.repeat(50)),
      ),
      swap: fc.boolean(),
    }),
    { minLength: 1, maxLength: 4 },
  ),
});

function mutate({
  lesson,
  edits,
}: {
  lesson: number;
  edits: readonly { at: number; drop: number; put: string; swap: boolean }[];
}): string {
  let text = LESSONS[lesson]!;
  for (const { at, drop, put, swap } of edits) {
    const from = Math.floor(at * text.length);
    if (swap) {
      const lines = text.split("\n");
      const line = Math.floor(at * lines.length);
      const [moved] = lines.splice(line, 1);
      lines.splice((line * 7 + drop) % (lines.length + 1), 0, moved ?? "");
      text = lines.join("\n");
    } else text = text.slice(0, from) + put + text.slice(from + drop);
  }
  return text;
}

test("2,000 mutated lessons are each read or refused with a located fault, quickly and without an exception", {
  timeout: 60_000,
}, () => {
  let slowest = 0;
  let refused = 0;
  fc.assert(
    fc.property(mutation, (given) => {
      const start = performance.now();
      const { value, faults } = readLesson(mutate(given), "x.md");
      slowest = Math.max(slowest, performance.now() - start);
      if (value === null) {
        refused++;
        expect(faults).not.toEqual([]);
      }
      for (const { path, found, allowed } of faults) {
        expect(path).toMatch(/^x\.md:[1-9]\d*$/);
        expect(found).toMatch(/\S/);
        expect(allowed).toMatch(/\S/);
        expect(found).not.toBe(allowed);
      }
      // What was accepted can be shown, and asks the model for numbers only.
      for (let index = 0; index < (value?.steps.length ?? 0); index++) {
        const { set } = stepState(value!, index).request;
        for (const setting of Object.values(set)) {
          expect(typeof setting === "string" || Number.isFinite(setting)).toBe(true);
        }
      }
    }),
    { numRuns: 2000, seed: 20_260_101 },
  );
  expect(refused).toBeGreaterThan(500);
  expect(refused).toBeLessThan(2000);
  // ms; a loaded machine included
  expect(slowest).toBeLessThan(1500);
});

test("text of any kind is refused, never followed", () => {
  fc.assert(
    fc.property(fc.string({ maxLength: 3000, unit: "binary" }), (text) => {
      expect(readLesson(text, "x.md").value).toBeNull();
    }),
    { numRuns: 200, seed: 7 },
  );
});
