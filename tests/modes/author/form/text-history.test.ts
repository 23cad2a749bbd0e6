import { expect, test } from "vitest";
import { textHistory } from "../../../../src/modes/author/form/text-history.ts";

test("what was done in the form can be undone after the text was shown otherwise", () => {
  const history = textHistory();
  history.meet("a");
  history.remember("a", "title");
  history.leave("ab");
  history.meet("ab");
  expect(history.undo("ab")).toBe("a");
  expect(history.redo("a")).toBe("ab");
});

test("what was changed meanwhile is one edit of its own", () => {
  const history = textHistory();
  history.meet("a");
  history.remember("a", "title");
  history.leave("ab");
  history.meet("abcd");
  history.remember("abcd", "title");
  expect(["abcde", "abcd", "ab"].map((now) => history.undo(now))).toEqual(["abcd", "ab", "a"]);
  expect(history.undo("a")).toBeNull();
});
