import fc from "fast-check";
import { expect, test } from "vitest";
import { differenceOf, withDifference } from "../../../src/lesson/library/translation-difference.ts";

test("a difference leads from any value to any other, and back", () => {
  fc.assert(
    fc.property(fc.jsonValue(), fc.jsonValue(), (one, other) => {
      expect(withDifference<unknown>(one, differenceOf(one, other))).toEqual(other);
      expect(withDifference<unknown>(other, differenceOf(other, one))).toEqual(one);
      expect(differenceOf(one, structuredClone(one))).toBeUndefined();
    }),
  );
});

test("only what differs is carried, and the rest stays the source's own", () => {
  const source = {
    title: "Steps",
    steps: [{ say: "one", scene: { stage: "glenn" } }, { say: "two" }],
    reader: null,
  };
  const translated = {
    title: "Schritte",
    steps: [{ say: "eins", scene: { stage: "glenn" } }, { say: "two" }],
    reader: null,
  };
  const difference = differenceOf(source, translated);
  expect(difference).toEqual({ title: "Schritte", steps: { 0: { say: "eins" } } });
  const made = withDifference(source, difference);
  expect(made).toEqual(translated);
  expect(made.steps[0]!.scene).toBe(source.steps[0]!.scene);
  expect(source.title).toBe("Steps");
});

test("a list of another length, and a key that is gone, are carried whole", () => {
  expect(differenceOf({ list: [1, 2] }, { list: [1] })).toEqual({ list: [[1]] });
  expect(differenceOf({ a: 1, b: 2 }, { a: 1 })).toEqual([{ a: 1 }]);
});
