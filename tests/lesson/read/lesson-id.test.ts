import { expect, test } from "vitest";
import { lessonIdOf, lessonTitleOf, withFreeId } from "../../../src/lesson/read/lesson-id.ts";

const text = (id: string) => `---\nid: ${id}\ntitle: T\n---\n\n## One {#one}\n\n### plain\nid: no\n`;

test("a copy is the same lesson under an id that no other has", () => {
  const copy = withFreeId(text("mine # ours"), "mine", [text("mine"), text("mine-2 # twice")]);
  expect(copy).toBe(text("mine-3"));
  expect(lessonIdOf(copy)).toBe("mine-3");
});

test("an id may stand in quotes", () => {
  expect(lessonIdOf(text('"ward" # ours'))).toBe("ward");
  expect(lessonIdOf(text("'ward'"))).toBe("ward");
  expect(withFreeId(text('"ward"'), "ward", [text('"ward"')])).toBe(text("ward-2"));
});

test("a text without an id stays without", () => {
  expect(lessonIdOf("no lesson")).toBe("");
  expect(withFreeId("no lesson", "mine", [])).toBe("no lesson");
});

test("a list names a text by its title, as it stands there", () => {
  expect(lessonTitleOf(text("mine"))).toBe("T");
  expect(lessonTitleOf('---\ntitle: "Our ward: two tubes"\n---\n')).toBe("Our ward: two tubes");
  expect(lessonTitleOf("no lesson")).toBe("");
});
