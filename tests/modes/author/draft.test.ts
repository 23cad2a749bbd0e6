import { expect, test, vi } from "vitest";
import type { Port } from "../../../src/chain/port.ts";
import type { FromDraftChecker, ToDraftChecker } from "../../../src/lesson/check/draft-checker.ts";
import { openDraft } from "../../../src/modes/author/draft.ts";
import { plainFix } from "../../../src/modes/author/plain-fix.ts";
import { openOwnTexts } from "../../../src/modes/shared/own/own-texts.ts";

const LIBRARY = {
  language: "en",
  lessons: [],
  own: new Set<string>(),
  glossary: {},
  sources: {},
  pages: {},
  faults: [],
};
const file = (text: string, name = "mine.md") => new File([text], name);

/** A desk with a checker that answers when it is asked to. */
async function desk(first = "kit") {
  let ids = 0;
  const texts = await openOwnTexts({
    store: { all: async () => [], put: async () => {}, remove: async () => {} },
    newId: () => `t${++ids}`,
  });
  const ports: (Port & { readonly heard: ToDraftChecker[]; closed: boolean })[] = [];
  const startChecker = () => {
    const port = {
      heard: [] as ToDraftChecker[],
      closed: false,
      post: (message: unknown) => void port.heard.push(message as ToDraftChecker),
      onMessage: (_: unknown) => {},
      onFailure: (_: string) => {},
      close() {
        port.closed = true;
      },
    };
    ports.push(port);
    return port;
  };
  const draft = openDraft({ texts, library: LIBRARY, startChecker, id: texts.add("First", first) });
  const say = (message: FromDraftChecker) => ports.at(-1)?.onMessage(message);
  return { texts, draft, ports, say };
}

test("a file is a text of its own: what was written before stays", async () => {
  const { texts, draft } = await desk();
  draft.write("kit, and my own");
  await draft.take(file("from a file"));
  expect([draft.own.value.name, draft.own.value.text]).toEqual(["mine", "from a file"]);
  expect(texts.list.value.map(({ text }) => text)).toContain("kit, and my own");
});

test("a file that can be no lesson leaves the desk as it is and says why", async () => {
  const { texts, draft } = await desk();
  await draft.take(file("x\0y", "picture.md"));
  expect(draft.refusedFile.value).toBe("picture.md");
  await draft.take(file("x".repeat(600_000), "huge.md"));
  expect(draft.refusedFile.value).toBe("huge.md");
  expect(draft.faults.value).toEqual([]);
  expect([draft.own.value.text, texts.list.value.length]).toEqual(["kit", 1]);
  draft.write("kit, and my own");
  expect(draft.refusedFile.value).toBeNull();
});

test("only what is said of the latest text counts", async () => {
  const { draft, say } = await desk();
  draft.write("second");
  say({ kind: "read", id: 1, lesson: null, faults: [{ path: "lesson.md:1", found: "old", allowed: "-" }] });
  expect(draft.faults.value).toEqual([]);
  say({ kind: "read", id: 2, lesson: null, faults: [{ path: "lesson.md:3", found: "new", allowed: "-" }] });
  expect(draft.faults.value.map(({ found }) => found)).toEqual(["new"]);
});

test("a text whose reading does not end is given up, and the next change starts a new checker", async () => {
  vi.useFakeTimers();
  try {
    const { draft, ports } = await desk();
    vi.advanceTimersByTime(4_000);
    expect(draft.faults.value[0]?.found).toBe("a text that takes longer than 4 s to read");
    expect(ports[0]?.closed).toBe(true);
    draft.write("shorter");
    expect(ports[1]?.heard).toMatchObject([{ kind: "library" }, { kind: "text", text: "shorter" }]);
  } finally {
    vi.useRealTimers();
  }
});

test("a word that the checker knows is offered in place of the wrong one", () => {
  const fault = {
    path: "lesson.md:1",
    found: "set.conduitDiametre: unknown",
    allowed: "a name; nearest: conduitDiameter",
  };
  expect(
    plainFix({ ...fault, found: 'unknown key "conduitDiametre"' }, "set: { conduitDiametre: 10 }"),
  ).toEqual({
    text: "set: { conduitDiameter: 10 }",
    word: "conduitDiameter",
  });
  expect(plainFix({ ...fault, allowed: "a number" }, "set: { conduitDiametre: 10 }")).toBeNull();
  expect(plainFix(fault, "nothing of it here")).toBeNull();
});

test("figures stay with the text while its words change, and come along with a file that is pasted whole", async () => {
  const figure = { name: "hose.png", data: "iVBORw0KGgo=" };
  const { texts, draft } = await desk("words\n");
  draft.setFigures([figure]);
  draft.write("other words\n");
  expect([draft.own.value.text, draft.figures.value]).toEqual(["other words\n", [figure]]);
  const file = texts.list.value[0]!.text;
  expect(file).toContain("hose.png iVBORw0KGgo=");
  draft.setFigures([]);
  expect(texts.list.value[0]!.text).toBe("other words\n");
  draft.write(file);
  expect([draft.own.value.text, draft.figures.value]).toEqual(["other words\n", [figure]]);
});

test("a pasted figure that is no picture is left out, and told", async () => {
  const { texts, draft } = await desk("words\n");
  draft.write("other words\n=== figures ===\nhose.png R0lGODlh\n");
  expect(texts.list.value[0]!.text).toBe("other words\n");
  expect(draft.faults.value).toEqual([
    { path: "lesson.md:1", found: "hose.png is no PNG", allowed: expect.stringContaining("type") },
  ]);
});

test.each(["words\n", "words\r\nas Windows ends them\r\n", "no line end"])(
  "%j with a figure, saved and opened again, is the same file byte for byte",
  async (words) => {
    const { texts, draft } = await desk(words);
    draft.setFigures([{ name: "hose.png", data: "iVBORw0KGgo=" }]);
    const saved = texts.list.value[0]!.text;
    await draft.take(file(saved, "again.md"));
    expect(texts.list.value).toHaveLength(2);
    expect(texts.list.value.map(({ text }) => text)).toEqual([saved, saved]);
    expect(draft.figures.value).toEqual([{ name: "hose.png", data: "iVBORw0KGgo=" }]);
  },
);

test("of two lessons with one id only one is listed, and the desk says so, at the line", async () => {
  const { texts, draft } = await desk("---\nid: mine\n---\n");
  const twin = texts.add("Her version", "---\ntitle: T\nid: mine # hers\n---\n");
  const found = 'id "mine", which "Her version" of your lessons has';
  expect(draft.faults.value).toMatchObject([{ path: "lesson.md:2", found, allowed: "an id of its own" }]);
  texts.show(twin, false);
  expect(draft.faults.value).toEqual([]);
});
