// @vitest-environment happy-dom
import { render } from "preact";
import { expect, it } from "vitest";
import { FaultNote } from "../../src/ui/fault-note.tsx";

const shown = (path: string, found: string) => {
  const host = document.createElement("div");
  render(<FaultNote title="" faults={[{ path, found, allowed: "one" }]} />, host);
  return host.textContent ?? "";
};

it("shows signs that turn the order of the words, and signs that are none, by their number", () => {
  expect(shown("lesson", "abc\u202Edef\u2066\n")).toContain("“abc[U+202E]def[U+2066][U+000A]”");
  expect(shown("pic\u202Egnp.exe", "?")).toContain("pic[U+202E]gnp.exe");
  expect(shown("lesson", "Größe ×, שלום")).toContain("“Größe ×, שלום”");
  expect(shown("lesson", "\u202E".repeat(500)).length).toBeLessThan(200);
});
