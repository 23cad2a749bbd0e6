import "fake-indexeddb/auto";
import { clear, createStore, set } from "idb-keyval";
import { afterEach, expect, test, vi } from "vitest";
import { type OwnText, openOwnTexts, type TextStore } from "../../../../src/modes/shared/own/own-texts.ts";
import { browserTextStore } from "../../../../src/modes/shared/own/text-store.ts";

const MINUTE = 60_000;
const DATABASE = createStore("lungward-own", "texts");

afterEach(async () => {
  vi.unstubAllGlobals();
  await clear(DATABASE);
});

function opened(store: TextStore, clock = { now: 0 }) {
  let ids = 0;
  return openOwnTexts({ store, now: () => clock.now, newId: () => `t${++ids}` });
}

const memory = (kept: unknown[] = []): TextStore & { kept: Map<string, unknown> } => {
  const map = new Map<string, unknown>(kept.map((each, i) => [`old${i}`, each]));
  return {
    kept: map,
    all: async () => [...map.values()],
    put: async (text) => void map.set(text.id, text),
    remove: async (id) => void map.delete(id),
  };
};

test("a text is there when the page opens anew, with its name, its words and whether it is shown", async () => {
  const texts = await opened(browserTextStore());
  const id = texts.add("Mine", "one");
  texts.write(id, "two");
  texts.rename(id, "Ours");
  texts.show(id, false);
  await new Promise((done) => setTimeout(done, 20));
  const again = await opened(browserTextStore());
  expect(again.list.value).toMatchObject([{ id, name: "Ours", text: "two", listed: false }]);
  again.remove(id);
  await new Promise((done) => setTimeout(done, 20));
  expect((await opened(browserTextStore())).list.value).toEqual([]);
});

test("a text whose write had not ended when the page closed is there all the same", async () => {
  const late = { id: "late", name: "Late", text: "typed", changed: 5, listed: true, earlier: [] };
  const kept = new Map([["lungward.unsaved", JSON.stringify(late)]]);
  vi.stubGlobal("localStorage", {
    getItem: (key: string) => kept.get(key) ?? null,
    setItem: (key: string, value: string) => void kept.set(key, value),
    removeItem: (key: string) => void kept.delete(key),
  });
  const texts = await opened(browserTextStore());
  expect(texts.list.value).toEqual([late]);
  texts.write("late", "typed on");
  expect(kept.get("lungward.unsaved")).toContain("typed on");
  await new Promise((done) => setTimeout(done, 20));
  expect(kept.size).toBe(0);
  expect((await opened(browserTextStore())).list.value[0]?.text).toBe("typed on");
});

const NO_TEXTS = ["null", "7", '"late"', "[]", "{}", '{"id":"late"}', '{"id":"late","changed":9}', "no JSON"];

test.each(NO_TEXTS)(
  "what stands in the place of an unsaved text and is none is passed over: %s",
  async (found) => {
    const kept = { id: "kept", name: "Kept", text: "words", changed: 5, listed: true, earlier: [] };
    vi.stubGlobal("localStorage", {
      getItem: () => found,
      setItem: () => {},
      removeItem: () => {},
    });
    const store = browserTextStore();
    await store.put(kept);
    expect(await store.all()).toEqual([kept]);
    await store.remove("late");
  },
);

test("what is no text of ours in the database keeps no unsaved text from opening", async () => {
  const late = { id: "late", name: "Late", text: "typed", changed: 5, listed: true, earlier: [] };
  vi.stubGlobal("localStorage", { getItem: () => JSON.stringify(late) });
  await set("odd", null, DATABASE);
  expect((await opened(browserTextStore())).list.value).toEqual([late]);
});

test("another text never takes a text's place", async () => {
  const texts = await opened(memory());
  texts.add("First", "mine");
  texts.add("Second", "from a file");
  expect(texts.list.value.map(({ text }) => text).sort()).toEqual(["from a file", "mine"]);
});

test("what stood for two minutes, and what is cut away at once, can be had back", async () => {
  const clock = { now: 10 * MINUTE };
  const texts = await opened(memory(), clock);
  const id = texts.add("Mine", "a long first text");
  clock.now += MINUTE;
  texts.write(id, "a long first text, on");
  texts.write(id, "a long first text, on and");
  clock.now += 3 * MINUTE;
  texts.write(id, "a long first text, on and on");
  texts.write(id, "");
  texts.write(id, "new");
  expect(texts.list.value[0]?.earlier.map(({ text }) => text)).toEqual([
    "a long first text",
    "a long first text, on and",
    "a long first text, on and on",
  ]);
});

test("at most twenty earlier versions are kept", async () => {
  const clock = { now: 0 };
  const texts = await opened(memory(), clock);
  const id = texts.add("Mine", "0");
  for (let i = 1; i <= 30; i++) {
    clock.now += 3 * MINUTE;
    texts.write(id, String(i));
  }
  expect(texts.list.value[0]?.earlier.map(({ text }) => text)).toEqual(
    Array.from({ length: 20 }, (_, i) => String(10 + i)),
  );
});

test("what is not a text of ours is passed over and stays", async () => {
  const store = memory([
    null,
    7,
    { id: "x" },
    { id: "y", name: "n", text: "t", changed: 1, listed: true, earlier: [1] },
  ]);
  const texts = await opened(store);
  expect(texts.list.value).toEqual([]);
  expect(store.kept.size).toBe(4);
});

test("without storage the texts last as long as the page, and that is known", async () => {
  const denied = async () => Promise.reject(new Error("denied"));
  const texts = await opened({ all: denied, put: denied, remove: denied });
  expect(texts.keeps.value).toBe(false);
  const id = texts.add("Mine", "words");
  const [mine] = texts.list.value as readonly [OwnText];
  expect([mine.id, mine.text]).toEqual([id, "words"]);
});
