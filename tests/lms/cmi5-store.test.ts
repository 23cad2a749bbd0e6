/** A store that fails for a while, and launch data that are none. */
import { expect, test } from "vitest";
import { CHOICE } from "./answers.ts";
import { faultsOfVisit } from "./cmi5-rules.ts";
import { closed, type Outage, record, recordStore, report, verbs } from "./cmi5-visit.ts";

test.each([503, "thrown"] as const)(
  "what a store answers with %s is stated again with the next report, as the same statement; progress is kept meanwhile",
  async (now) => {
    const outage: Outage = { now: null };
    const store = recordStore({}, outage);
    const voice = record(store);
    await voice.load();
    const tryTwice = async (completed: boolean) => {
      outage.now = now;
      store.documents.clear();
      expect(await voice.report({ ...report(8, completed), answers: [CHOICE] })).toBe(false);
      expect(store.documents.has("lungward.progress")).toBe(true);
      expect(await voice.report({ ...report(8, completed), answers: [CHOICE] })).toBe(true);
      expect(store.statements.at(-1)!.id).toBe(outage.lost);
    };
    await tryTwice(false);
    await tryTwice(true);
    expect(verbs(store)).toEqual(["initialized", "answered", "completed", "passed"]);
    expect(JSON.parse(store.documents.get("lungward.progress")!).said).toEqual(["completed", "passed"]);
    await voice.report({ ...report(8, true), answers: [CHOICE] });
    await closed(voice);
    expect(verbs(store)).toEqual(["initialized", "answered", "completed", "passed", "terminated"]);
    expect(faultsOfVisit(store.statements, {})).toEqual([]);
  },
);

test("nothing is stated before the visit's beginning is kept", async () => {
  const outage: Outage = { now: 503 };
  const store = recordStore({}, outage);
  const voice = record(store);
  await voice.load();
  outage.now = 503;
  expect(await voice.report({ ...report(8, true), answers: [CHOICE] })).toBe(false);
  expect(verbs(store)).toEqual([]);
  expect(await voice.report({ ...report(8, true), answers: [CHOICE] })).toBe(true);
  expect(verbs(store)).toEqual(["initialized", "answered", "passed", "completed"]);
});

test.each([500, 403, "thrown"] as const)(
  "progress that a store answers for with %s is not overwritten, and nothing is said of a learner so unknown",
  async (now) => {
    const store = recordStore();
    store.documents.set("lungward.progress", '{"text":"earlier"}');
    const unread = {
      ...store,
      ask: async (url: string, init: RequestInit) => {
        if (init.method !== "GET" || !url.includes("stateId=lungward.progress")) return store.ask(url, init);
        if (now === "thrown") throw new TypeError("Failed to fetch");
        return new Response("", { status: now });
      },
    };
    const voice = record(unread);
    expect(await voice.load()).toBe(null);
    expect(await voice.report(report(8, true))).toBe(false);
    await closed(voice);
    expect(store.documents.get("lungward.progress")).toBe('{"text":"earlier"}');
    expect(store.statements).toEqual([]);
  },
);

test.each([{ "auth-token": 5 }, { "auth-token": {} }, null])(
  "a token that is none (%j) refuses the launch, and the store is asked for nothing",
  async (token) => {
    const store = recordStore();
    const asked: string[] = [];
    const ask = async (url: string) => {
      asked.push(url);
      return Response.json(token);
    };
    const voice = record({ ...store, ask });
    expect(await voice.load()).toBe(null);
    expect(await voice.report(report(8, true))).toBe(false);
    await closed(voice);
    expect(asked).toHaveLength(1);
  },
);

test("a statement that the store has already counts as kept", async () => {
  const outage: Outage = { now: null };
  const voice = record(recordStore({}, outage));
  await voice.load();
  outage.now = 409;
  expect(await voice.report({ ...report(1, false), answers: [CHOICE] })).toBe(true);
});

test.each([7, -0.1, "0.9", null])("a mark of %j is none: the course's own decides", async (masteryScore) => {
  const store = recordStore({ masteryScore, launchMode: "normal" });
  const voice = record(store);
  await voice.report(report(8, true));
  await closed(voice);
  expect(verbs(store)).toEqual(["initialized", "passed", "completed", "terminated"]);
  expect(faultsOfVisit(store.statements, {})).toEqual([]);
});

test.each([
  { contextTemplate: "none" },
  { contextTemplate: { contextActivities: [1], extensions: "none", platform: "x" } },
  { contextTemplate: { contextActivities: { category: "none" } } },
  { contextTemplate: null },
])("a context template that is none, or is so in part, costs no statement: %j", async (launchData) => {
  const store = recordStore(launchData);
  const voice = record(store);
  expect(await voice.report({ ...report(8, true), answers: [CHOICE] })).toBe(true);
  for (const { context } of store.statements) {
    expect(Array.isArray(context.contextActivities?.category ?? [])).toBe(true);
    expect(Object.keys(context)).not.toContain("0");
    expect(Object.keys(context.extensions ?? {})).toEqual([]);
  }
});

test("a category that stands alone in the template stays beside cmi5's own", async () => {
  const alone = { id: "urn:lungward:alone" };
  const store = recordStore({ contextTemplate: { contextActivities: { category: alone } } });
  await record(store).load();
  expect(store.statements[0]!.context.contextActivities!.category).toEqual([
    alone,
    { id: "https://w3id.org/xapi/cmi5/context/categories/cmi5" },
  ]);
});

test.each([
  ["https://course.example/back?id=1", "https://course.example/back?id=1"],
  ["javascript:alert(1)", null],
  ["back.html", null],
  [undefined, null],
])("where who leaves is to go: %s is %s", async (returnURL, there) => {
  const voice = record(recordStore({ returnURL }));
  await voice.load();
  expect(voice.wayBack()).toBe(there);
});
