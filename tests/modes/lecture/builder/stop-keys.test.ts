import { expect, it } from "vitest";
import { changed, keyOf } from "../../../../src/modes/lecture/builder/stop-keys.ts";
import { wordsStop } from "../../../../src/modes/lecture/talk/own-stops.ts";

it("a stop keeps its key through moves and changes; a copy of it is another stop", () => {
  const first = wordsStop("title", "Invented");
  const key = keyOf(first);
  const edited = changed(first, { notes: "Greet the hall." });
  expect(edited).toMatchObject({ title: "Invented", notes: "Greet the hall." });
  expect(keyOf(edited)).toBe(key);
  expect(keyOf(changed(edited, { notes: "" }))).toBe(key);
  expect(keyOf({ ...first })).not.toBe(key);
});
