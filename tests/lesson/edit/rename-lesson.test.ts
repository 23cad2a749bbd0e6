import { expect, test } from "vitest";
import { followLesson } from "../../../src/lesson/edit/rename-lesson.ts";

const TEXT = `---
id: other
recall: [ward#wide, other#one, ward-two#wide] # asked again
---

## One {#one}

### plain
See [the tube](ward#wide), [here](#one) and [there](ward-two#wide).
`;

test("what names the lesson takes its new id, and nothing else changes", () => {
  expect(followLesson(TEXT, "ward", "our-ward")).toBe(
    TEXT.replace("[ward#wide,", "[our-ward#wide,").replace("](ward#", "](our-ward#"),
  );
  for (const same of [followLesson(TEXT, "none", "x"), followLesson(TEXT, "war", "x")])
    expect(same).toBe(TEXT);
});

test("settings that cannot be read stay as they are", () => {
  const broken = "---\nid: [\nrecall: [ward#wide]\n---\n\n## One {#one}\n\n### plain\n[a](ward#b)\n";
  expect(followLesson(broken, "ward", "x")).toBe(broken.replace("](ward#b)", "](x#b)"));
});
