import { expect, test } from "vitest";
import { cmi5Record } from "../../src/lms/cmi5.ts";
import { readLaunch } from "../../src/lms/cmi5-launch.ts";
import { duration } from "../../src/lms/duration.ts";
import { CHOICE, NUMBER } from "./answers.ts";
import { faultsOfVisit, type Statement } from "./cmi5-rules.ts";

const ACTOR = { account: { homePage: "https://course.example", name: "learner-1" } };
const QUERY = `?${new URLSearchParams({
  setting: "study",
  endpoint: "https://lrs.example/xapi",
  fetch: "https://course.example/token",
  actor: JSON.stringify(ACTOR),
  registration: "6a5a3a0e-0000-4000-8000-000000000001",
  activityId: "https://course.example/activity",
})}`;

/** What the next statement meets, once; the id of the one that met it. */
interface Outage {
  now: number | "thrown" | null;
  lost?: string | undefined;
}

/** A small store of documents and statements, such as a learning record store keeps (xAPI 1.0.3). */
function recordStore(launchData: object = {}, outage: Outage = { now: null }) {
  const documents = new Map<string, string>();
  const statements: Statement[] = [];
  const refused: string[] = [];
  const asked: string[] = [];
  let tokens = 0;
  const ask = async (url: string, init: RequestInit): Promise<Response> => {
    if (url === "https://course.example/token") {
      tokens++;
      return Response.json(tokens === 1 ? { "auth-token": "dG9rZW4=" } : { "error-code": "1" });
    }
    const headers = new Headers(init.headers);
    if (
      headers.get("Authorization") !== "Basic dG9rZW4=" ||
      headers.get("X-Experience-API-Version") !== "1.0.3"
    ) {
      refused.push(url);
      return new Response("", { status: 401 });
    }
    const { pathname, searchParams } = new URL(url);
    asked.push(pathname);
    if (pathname === "/xapi/agents/profile") return new Response("", { status: 404 });
    if (pathname === "/xapi/statements") {
      const failed = outage.now;
      outage.now = null;
      if (failed !== null) outage.lost = JSON.parse(String(init.body)).id;
      if (failed === "thrown") throw new TypeError("Failed to fetch");
      if (failed !== null) return new Response("", { status: failed });
      statements.push(JSON.parse(String(init.body)));
      return Response.json(["id"]);
    }
    const name = searchParams.get("stateId")!;
    if (name === "LMS.LaunchData") {
      return Response.json({
        contextTemplate: {
          extensions: { "https://w3id.org/xapi/cmi5/context/extensions/sessionid": "session-1" },
          contextActivities: { grouping: [{ id: "urn:lungward:lessons" }] },
        },
        launchMode: "Normal",
        ...launchData,
      });
    }
    if (init.method === "PUT") {
      documents.set(name, String(init.body));
      return new Response(null, { status: 204 });
    }
    const found = documents.get(name);
    return found === undefined ? new Response("", { status: 404 }) : new Response(found);
  };
  return { ask, statements, documents, refused, asked, tokens: () => tokens };
}

const record = (store: ReturnType<typeof recordStore>, now = () => 0) => {
  let count = 0;
  return cmi5Record(readLaunch(QUERY)!, {
    ask: store.ask,
    now,
    stamp: () => "2026-11-25T12:00:00Z",
    id: () => `id-${count++}`,
  });
};
const verbs = (store: ReturnType<typeof recordStore>) =>
  store.statements.map(({ verb }) => verb.id.split("/").pop());
const report = (right: number, completed: boolean) => ({
  text: "abc",
  place: "a#b",
  score: { right, asked: 10 },
  passMark: 0.6,
  answers: [],
  progress: completed ? 1 : 0,
  completed,
});

test("U18 initialized comes first, passed and completed once, terminated last; the token is asked for once", async () => {
  const store = recordStore();
  let clock = 0;
  const voice = record(store, () => clock);
  expect(await voice.load()).toBeNull();
  expect(voice.records()).toBe(true);
  expect(await voice.report(report(5, false))).toBe(true);
  clock = 90.5;
  expect(await voice.report(report(8, true))).toBe(true);
  expect(await voice.report(report(9, true))).toBe(true);
  voice.close();
  await new Promise((done) => setTimeout(done, 5));
  expect(verbs(store)).toEqual(["initialized", "passed", "completed", "terminated"]);
  expect(store.statements[1]!.result).toEqual({
    success: true,
    score: { scaled: 0.8 },
    duration: "PT90.50S",
  });
  expect(store.statements[2]!.result).toEqual({ completion: true, duration: "PT90.50S" });
  expect(faultsOfVisit(store.statements, {})).toEqual([]);
  for (const { context } of store.statements) {
    expect(context.extensions).toEqual({
      "https://w3id.org/xapi/cmi5/context/extensions/sessionid": "session-1",
    });
    expect(context.contextActivities!.category!.map(({ id }) => id)).toContain(
      "https://w3id.org/xapi/cmi5/context/categories/cmi5",
    );
  }
  expect(store.tokens()).toBe(1);
  expect(store.refused).toEqual([]);
});

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

test("a statement that the store has already counts as kept", async () => {
  const outage: Outage = { now: null };
  const voice = record(recordStore({}, outage));
  await voice.load();
  outage.now = 409;
  expect(await voice.report({ ...report(1, false), answers: [CHOICE] })).toBe(true);
});

test("what was reported is given back at the next visit", async () => {
  const store = recordStore();
  await record(store).report(report(5, false));
  const document = store.documents.get("lungward.progress")!;
  const next = recordStore();
  next.documents.set("lungward.progress", document);
  expect(await record(next).load()).toBe("abc");
});

const closed = async (voice: ReturnType<typeof record>) => {
  voice.close();
  await new Promise((done) => setTimeout(done, 5));
};

test("passed or failed, not both in one visit; passed in a later one, and never taken back", async () => {
  const first = recordStore();
  const voice = record(first);
  for (const right of [2, 8, 1]) await voice.report(report(right, true));
  await closed(voice);
  expect(verbs(first)).toEqual(["initialized", "failed", "completed", "terminated"]);
  const second = recordStore();
  second.documents.set("lungward.progress", first.documents.get("lungward.progress")!);
  const later = record(second);
  for (const right of [8, 1]) await later.report(report(right, true));
  await closed(later);
  // Completed was said: once for a registration.
  expect(verbs(second)).toEqual(["initialized", "passed", "terminated"]);
  const third = recordStore();
  third.documents.set("lungward.progress", second.documents.get("lungward.progress")!);
  const last = record(third);
  for (const right of [1, 9]) await last.report(report(right, true));
  await closed(last);
  expect(verbs(third)).toEqual(["initialized", "terminated"]);
  for (const { statements } of [first, second, third]) expect(faultsOfVisit(statements, {})).toEqual([]);
});

test.each([
  [0.9, 8, "failed"],
  [0.5, 5, "passed"],
])(
  "the course system's own mark of %d decides, and stands in the statement",
  async (masteryScore, right, verb) => {
    const store = recordStore({ masteryScore });
    const voice = record(store);
    await voice.report(report(right, true));
    await closed(voice);
    expect(verbs(store)).toEqual(["initialized", verb, "completed", "terminated"]);
    expect(faultsOfVisit(store.statements, { masteryScore })).toEqual([]);
  },
);

test("a course that asks nothing is completed, neither passed nor failed", async () => {
  const store = recordStore({ masteryScore: 0.8 });
  const voice = record(store);
  await voice.report({ ...report(0, true), score: { right: 0, asked: 0 } });
  await closed(voice);
  expect(verbs(store)).toEqual(["initialized", "completed", "terminated"]);
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

test("without a mark it is completed, neither passed nor failed", async () => {
  const store = recordStore();
  const voice = record(store);
  await voice.report({ ...report(1, true), passMark: null });
  await closed(voice);
  expect(verbs(store)).toEqual(["initialized", "completed", "terminated"]);
});

test.each(["Browse", "Review"])(
  "in launch mode %s nothing but the visit itself is recorded: no verdict, no answer, no progress",
  async (launchMode) => {
    const store = recordStore({ launchMode });
    const voice = record(store);
    await voice.load();
    expect(voice.records()).toBe(false);
    expect(await voice.report({ ...report(9, true), answers: [CHOICE] })).toBe(true);
    await closed(voice);
    expect(verbs(store)).toEqual(["initialized", "terminated"]);
    expect([...store.documents]).toEqual([]);
    expect(faultsOfVisit(store.statements, { launchMode })).toEqual([]);
  },
);

test("the learner's preferences are asked for at the start", async () => {
  const store = recordStore();
  await record(store).load();
  expect(store.asked).toContain("/xapi/agents/profile");
});

test("a store that cannot be reached is reported, not thrown", async () => {
  const voice = cmi5Record(readLaunch(QUERY)!, {
    ask: () => Promise.reject(new Error("offline")),
    now: () => 0,
    stamp: () => "",
    id: () => "",
  });
  expect(await voice.load()).toBeNull();
  expect(await voice.report(report(5, true))).toBe(false);
  voice.close();
});

test("a page that no course system launched, or launched badly, has no launch", () => {
  expect(readLaunch("?mode=study")).toBeNull();
  expect(readLaunch(QUERY.replace("https%3A%2F%2Flrs.example", "javascript%3A"))).toBeNull();
  expect(readLaunch(QUERY.replace(encodeURIComponent(JSON.stringify(ACTOR)).slice(0, 12), "x"))).toBeNull();
});

test("durations are ISO 8601", () => {
  expect(duration(61.256)).toBe("PT61.26S");
});

test("answers are stated once, with the question's text, the choices and what is right", async () => {
  const store = recordStore();
  const voice = record(store);
  await voice.report({ ...report(1, false), answers: [CHOICE] });
  await voice.report({ ...report(1, false), answers: [CHOICE, NUMBER] });
  await closed(voice);
  expect(verbs(store)).toEqual(["initialized", "answered", "answered", "terminated"]);
  expect(faultsOfVisit(store.statements, {})).toEqual([]);
  expect(store.statements[1]).toMatchObject({
    object: {
      id: "https://course.example/activity/questions/04-energy-loss/narrow-ask",
      definition: {
        interactionType: "choice",
        description: { en: "What happens to the pressure of 13.1 mmHg?" },
        choices: [
          { id: "falls", description: { en: "It falls" } },
          { id: "same", description: { en: "It same" } },
          { id: "rises", description: { en: "It rises" } },
        ],
        correctResponsesPattern: ["rises"],
      },
    },
    result: { response: "same", success: false },
  });
  expect(store.statements[2]).toMatchObject({
    object: { definition: { interactionType: "numeric", correctResponsesPattern: ["2.375[:]2.625"] } },
    result: { response: "2.6", success: true },
  });
});
