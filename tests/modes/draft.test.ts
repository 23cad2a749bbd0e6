import { expect, test } from "vitest";
import { openDraft } from "../../src/modes/author/draft.ts";

const LIBRARY = { language: "en", lessons: [], glossary: {}, sources: {}, pages: {}, faults: [] };
const file = (text: string) => new File([text], "mine.md");

test("a text that is as it was loaded gives way to another at once", async () => {
  const draft = openDraft(LIBRARY, "kit");
  draft.offer("other");
  expect(draft.text.value).toBe("other");
  await draft.take(file("from a file"));
  expect([draft.text.value, draft.offered.value]).toEqual(["from a file", null]);
});

test("a text that somebody has written on stays until they agree, wherever the other comes from", async () => {
  const draft = openDraft(LIBRARY, "kit");
  draft.write("kit, and my own");
  draft.offer("other");
  expect([draft.text.value, draft.offered.value]).toEqual(["kit, and my own", "other"]);
  draft.answer(false);
  expect([draft.text.value, draft.offered.value]).toEqual(["kit, and my own", null]);
  await draft.take(file("from a file"));
  expect(draft.text.value).toBe("kit, and my own");
  draft.answer(true);
  expect([draft.text.value, draft.offered.value]).toEqual(["from a file", null]);
  draft.offer("and on");
  expect(draft.text.value).toBe("and on");
});

test("an emptied text and the same text ask nothing", () => {
  const draft = openDraft(LIBRARY, "kit");
  draft.write(" \n");
  draft.offer("other");
  expect([draft.text.value, draft.offered.value]).toEqual(["other", null]);
  draft.write("mine");
  draft.offer("mine");
  expect(draft.offered.value).toBeNull();
});
