import fc from "fast-check";
import { expect, test } from "vitest";
import { parse } from "yaml";
import { type Path, readLeniently, setIn } from "../../../src/lesson/edit/yaml-edit.ts";

const QUESTION = `# What the room is asked.
kind: choose
ask: "Where: here or there?" # short
answers:
  # the right one
  here:
    say: Here
    right: true
    because: The tube is narrow here.   # physics
  there: { say: There, because: "No, it is wide." }

hints:
  - Look at the line.
  - Then at the tube. # twice
set: { conduitDiameter: 10, rest: [1, 2] }
`;

const changed = (before: string, after: string): string[] => {
  const old = before.split("\n");
  return after.split("\n").filter((line) => !old.includes(line));
};

test.each<[string, Path, unknown, readonly string[]]>([
  ["a sentence", ["ask"], "Why?", ["ask: Why? # short"]],
  ["a sentence that needs quotes", ["ask"], "Look: here #1", ['ask: "Look: here #1" # short']],
  ["a value deep inside", ["answers", "here", "because"], "It is.", ["    because: It is.   # physics"]],
  [
    "a value in braces",
    ["answers", "there", "because"],
    "No, wide",
    ['  there: { say: There, because: "No, wide" }'],
  ],
  [
    "a further key in braces",
    ["answers", "there", "show"],
    "wide",
    ['  there: { say: There, because: "No, it is wide.", show: wide }'],
  ],
  ["a further key in a map", ["answers", "here", "show"], "wide", ["    show: wide"]],
  ["a further entry", ["answers", "else"], { say: "No idea" }, ["  else:", "    say: No idea"]],
  ["an item", ["hints", 1], "Then here.", ["  - Then here. # twice"]],
  ["a further item", ["hints", 2], "And so on.", ["  - And so on."]],
  ["a number", ["set", "conduitDiameter"], 12.5, ["set: { conduitDiameter: 12.5, rest: [1, 2] }"]],
  ["a new map of numbers", ["view", "dye"], true, ["view: { dye: true }"]],
])("%s is set, and no other line changes", (_, path, value, lines) => {
  const after = setIn(QUESTION, path, value)!;
  expect(changed(QUESTION, after)).toEqual(lines);
  let found: unknown = parse(after);
  for (const key of path) found = (found as Record<string | number, unknown>)[key];
  expect(found).toEqual(value);
  // Every comment and every other line is still there.
  const gone = QUESTION.split("\n").filter((line) => !after.split("\n").includes(line));
  expect(gone.length).toBeLessThanOrEqual(1);
});

test.each<[string, Path, readonly string[]]>([
  ["a line", ["ask"], ['ask: "Where: here or there?" # short']],
  ["an entry with its lines", ["answers", "there"], ['  there: { say: There, because: "No, it is wide." }']],
  ["an item", ["hints", 0], ["  - Look at the line."]],
  ["a whole list", ["hints"], ["hints:", "  - Look at the line.", "  - Then at the tube. # twice"]],
])("%s is taken out, and nothing else", (_, path, lines) => {
  const after = setIn(QUESTION, path, undefined)!;
  expect(QUESTION.split("\n").filter((line) => !after.split("\n").includes(line))).toEqual(lines);
  expect(changed(QUESTION, after)).toEqual([]);
});

test("what would be left empty goes too", () => {
  expect(setIn("a: 1\nset: { x: 2 }\n", ["set", "x"], undefined)).toBe("a: 1\n");
  expect(setIn("a: 1\nset:\n  x: 2\n", ["set", "x"], undefined)).toBe("a: 1\n");
  expect(setIn("set: { x: 2, y: 3 }", ["set", "x"], undefined)).toBe("set: { y: 3 }");
  expect(setIn("set: { x: 2, y: 3 }", ["set", "y"], undefined)).toBe("set: { x: 2 }");
});

test("a new key takes its place in the order given", () => {
  expect(setIn("id: a\nreader: b\n", ["title"], "T", ["id", "title", "reader"])).toBe(
    "id: a\ntitle: T\nreader: b\n",
  );
  expect(setIn("reader: b\n", ["id"], "a", ["id", "title", "reader"])).toBe("id: a\nreader: b\n");
});

test("an empty text begins with the key; one that cannot be read is left alone", () => {
  expect(setIn("", ["set", "x"], 1)).toBe("set: { x: 1 }");
  expect(setIn("a: [1", ["a"], 1)).toBeNull();
  expect(setIn("- a\n", ["a"], 1)).toBeNull();
  expect(readLeniently("a: [1")).toBeNull();
  expect(setIn("ask:\nkind: goal\n", ["ask"], "Why?")).toBe("ask: Why?\nkind: goal\n");
});

test("a folded text gives way to its new wording", () => {
  expect(setIn("ask: >\n  one\n  two\nkind: goal\n", ["ask"], "Three")).toBe("ask: Three\nkind: goal\n");
  expect(setIn("ask: one\n  two\nkind: goal\n", ["ask"], "Three")).toBe("ask: Three\nkind: goal\n");
});

test("every key has its line", () => {
  const { places } = readLeniently(QUESTION)!;
  const lineOf = (...path: Path) => places.find((place) => place.path.join() === path.join())?.line;
  expect(lineOf("answers", "here", "because")).toBe(8);
  expect(lineOf("answers", "there", "because")).toBe(9);
  expect(lineOf("hints", 1)).toBe(13);
  expect(lineOf("answers", "nowhere")).toBeUndefined();
});

test("whatever is written, it is read back, and all else is as before", () => {
  const words = fc.string({ minLength: 1, maxLength: 30 });
  const paths: Path[] = [
    ["ask"],
    ["answers", "here", "say"],
    ["answers", "there", "say"],
    ["answers", "there", "show"],
    ["hints", 0],
    ["hints", 2],
    ["set", "rest"],
    ["fresh"],
    ["deep", "er"],
  ];
  fc.assert(
    fc.property(fc.constantFrom(...paths), fc.oneof(words, fc.integer(), fc.boolean()), (path, value) => {
      const after = parse(setIn(QUESTION, path, value)!);
      const before = parse(QUESTION);
      const holder = (root: Record<string, never>) =>
        path
          .slice(0, -1)
          .reduce((at: Record<string, never>, key) => (at[key as string] ??= {} as never), root);
      const last = path.at(-1) as string;
      expect(holder(after)[last]).toEqual(value);
      (holder(before) as Record<string, unknown>)[last] = value;
      expect(after).toEqual(before);
    }),
    { numRuns: 400 },
  );
});
