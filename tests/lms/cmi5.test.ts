import { expect, test } from "vitest";
import { cmi5Record } from "../../src/lms/cmi5.ts";
import { readLaunch } from "../../src/lms/cmi5-launch.ts";
import { duration } from "../../src/lms/duration.ts";
import { CHOICE, NUMBER } from "./answers.ts";
import { faultsOfVisit } from "./cmi5-rules.ts";
import { ACTOR, closed, FORGETFUL, QUERY, record, recordStore, report, verbs } from "./cmi5-visit.ts";

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

test("what was reported is given back at the next visit", async () => {
  const store = recordStore();
  await record(store).report(report(5, false));
  const document = store.documents.get("lungward.progress")!;
  const next = recordStore();
  next.documents.set("lungward.progress", document);
  expect(await record(next).load()).toBe("abc");
});

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
    keeper: FORGETFUL,
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
