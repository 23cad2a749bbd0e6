// @vitest-environment happy-dom
import { expect, test } from "vitest";
import { viewIn, viewsOf } from "../../../src/modes/author/views.ts";

test("the picture is a view of its own only where form and picture do not fit side by side", () => {
  expect(viewsOf(true)).toEqual(["form", "text", "picture"]);
  expect(viewsOf(false)).toEqual(["form", "text"]);
  expect(["text", "picture", "handout", undefined].map((view) => viewIn(view, true))).toEqual([
    "text",
    "picture",
    "form",
    "form",
  ]);
  expect(viewIn("picture", false)).toBe("form");
});
