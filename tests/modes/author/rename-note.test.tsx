// @vitest-environment happy-dom
import "fake-indexeddb/auto";
import { computed, signal } from "@preact/signals";
import { render } from "preact";
import { act } from "preact/test-utils";
import { afterEach, beforeEach, expect, test, vi } from "vitest";
import { NO_PROGRESS, writeProgress } from "../../../src/lesson/progress/progress.ts";
import { lessonIdOf } from "../../../src/lesson/read/lesson-id.ts";
import type { Draft } from "../../../src/modes/author/draft.ts";
import { RenameNote } from "../../../src/modes/author/rename-note.tsx";
import { openOwnTexts } from "../../../src/modes/shared/own/own-texts.ts";

const LIBRARY = { lessons: [{ id: "04-energy-loss" }] as never, own: new Set<string>() };
const textOf = (id: string) => `---\nid: ${id}\n---\n`;

beforeEach(() => {
  const kept = (latest: string) => writeProgress({ ...NO_PROGRESS, latest });
  const setItem = vi.fn().mockImplementationOnce(() => {
    throw new Error("the device is full");
  });
  vi.stubGlobal("localStorage", { getItem: () => kept("ward"), setItem });
});
afterEach(() => {
  render(null, document.body);
  vi.unstubAllGlobals();
});

/** A text opened as "ward" and called "our-ward" then. */
async function rename() {
  const store = { all: async () => [], put: async () => {}, remove: async () => {} };
  const texts = await openOwnTexts({ store });
  const id = texts.add("A", textOf("ward"));
  const own = computed(() => texts.list.value[0]!);
  const lesson = computed(() => ({ id: lessonIdOf(own.value.text) }));
  const draft = { own, lesson, busy: signal(false), taken: signal(false) } as unknown as Draft;
  await act(() => render(<RenameNote {...{ texts, draft }} library={LIBRARY} />, document.body));
  texts.write(id, textOf("our-ward"));
}

test("a change that could not be kept is told, and can be asked for again", async () => {
  await rename();
  const follow = await vi.waitFor(() => document.querySelector("button") ?? Promise.reject("not asked"));
  follow.click();
  await vi.waitFor(() =>
    expect(document.body.textContent).toContain("Not everything was changed: the device is full"),
  );
  document.querySelector("button")?.click();
  await vi.waitFor(() => expect(document.body.textContent).toBe(""));
});
