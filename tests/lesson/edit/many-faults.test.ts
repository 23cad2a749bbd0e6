/** A hundred faults in one block must not freeze the form: the block is read once. */
import { expect, test, vi } from "vitest";
import { outlineOf } from "../../../src/lesson/edit/text-outline.ts";

vi.mock("../../../src/lesson/edit/yaml-edit.ts", async (original) => {
  const own = await original<typeof import("../../../src/lesson/edit/yaml-edit.ts")>();
  return { ...own, readLeniently: vi.fn(own.readLeniently) };
});

// Another file of the same process may have loaded both already, with the reader as it is.
vi.resetModules();
const { fieldOfFault } = await import("../../../src/lesson/edit/field-of-fault.ts");
const { readLeniently } = await import("../../../src/lesson/edit/yaml-edit.ts");

test("settings are read once for all faults in them", () => {
  const clots = Array(100).fill(50).join(", ");
  const text = `---\nid: mine\n---\n\n## One {#one}\n\n\`\`\`scene\nview: { clots: [${clots}] }\n\`\`\`\n`;
  const outline = outlineOf(text);
  const found = Array.from({ length: 100 }, (_, place) => `view.clots.${place}: 50`);
  const fields = found.map((each) =>
    fieldOfFault(outline, { path: "lesson.md:8", found: each, allowed: "" }),
  );
  expect(fields[7]).toEqual({ step: 0, field: "scene.view.clots.7" });
  expect(readLeniently).toHaveBeenCalledTimes(1);
});
