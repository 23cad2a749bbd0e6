// @vitest-environment happy-dom
/** A launched page that is loaded anew: the visit goes on or is over, and no address turns it elsewhere. */
import { beforeEach, expect, test } from "vitest";
import { launched, visitKeeper } from "../../src/lms/cmi5-kept.ts";
import { readLaunch } from "../../src/lms/cmi5-launch.ts";
import { faultsOfVisit } from "./cmi5-rules.ts";
import { closed, QUERY, record, recordStore, report, verbs } from "./cmi5-visit.ts";

const BACK = "https://course.example/back";
const REGISTRATION = new URLSearchParams(QUERY).get("registration")!;
/** After a link within the page. */
const LATER = `?mode=study&lesson=02-steps&registration=${REGISTRATION}`;
const storage = () => sessionStorage;
const keeper = () => visitKeeper(readLaunch(QUERY)!, storage);
const goesOn = (query: string) => {
  const found = launched(query, storage);
  return found?.kind === "launch" ? found.goesOn : found;
};
const withWords = (words: Record<string, string>) => {
  const query = new URLSearchParams(QUERY);
  for (const [name, value] of Object.entries(words)) query.set(name, value);
  return `?${query}`;
};
const begun = async () => {
  const store = recordStore({ returnURL: BACK });
  const voice = record(store, () => 0, keeper());
  await voice.report(report(5, false));
  return { store, voice };
};

beforeEach(() => sessionStorage.clear());

test.each([QUERY, LATER])(
  "a page that was thrown out of memory goes on with its visit, by the same token, and greets nobody twice: %s",
  async (query) => {
    const { store } = await begun();
    const found = launched(query, storage);
    expect(found).toMatchObject({ kind: "launch", launch: readLaunch(QUERY) });
    const again = record(store, () => 0, keeper(), goesOn(query) as never);
    expect(await again.load()).toBe("abc");
    expect(await again.report(report(8, true))).toBe(true);
    await closed(again);
    expect(verbs(store)).toEqual(["initialized", "passed", "completed", "terminated"]);
    expect(faultsOfVisit(store.statements, {})).toEqual([]);
    expect(store.tokens()).toBe(1);
    expect(store.refused).toEqual([]);
  },
);

test("a page that was left or loaded again knows that its visit is over and the way back, and keeps nothing that could write a record", async () => {
  const { voice } = await begun();
  const late = voice.report(report(8, true));
  await closed(voice);
  await late;
  for (const query of [QUERY, LATER])
    expect(launched(query, storage)).toEqual({ kind: "over", wayBack: BACK });
  const kept = JSON.stringify({ ...sessionStorage });
  for (const secret of ["dG9rZW4=", "learner-1", "lrs.example"]) expect(kept).not.toContain(secret);
});

test.each([
  { endpoint: "https://elsewhere.example/xapi" },
  { actor: JSON.stringify({ account: { homePage: "https://course.example", name: "someone-else" } }) },
  { activityId: "https://course.example/other" },
  { fetch: "https://course.example/next-token" },
])(
  "an address with the registration of a visit and another launch, %j, gets no token of it",
  async (words) => {
    await begun();
    const before = JSON.stringify({ ...sessionStorage });
    expect(goesOn(withWords(words))).toBeNull();
    expect(JSON.stringify({ ...sessionStorage })).toBe(before);
  },
);

test("an address without a registration, or with another one, is not of the visit", async () => {
  await begun();
  expect(launched("?mode=study", storage)).toBeNull();
  expect(launched("?mode=study&registration=6a5a3a0e-0000-4000-8000-000000000002", storage)).toBeNull();
  expect(goesOn(withWords({ registration: "6a5a3a0e-0000-4000-8000-000000000002" }))).toBeNull();
});

test.each([
  "",
  "{",
  "null",
  "[]",
  '{"registration":7}',
  JSON.stringify({ registration: REGISTRATION, fetch: "f", wayBack: "javascript:alert(1)", open: null }),
])("what else stands in storage is passed over: %s", (text) => {
  sessionStorage.setItem("lungward.launch", text);
  expect(launched(LATER, storage)).toBeNull();
  expect(launched(QUERY, storage)).toMatchObject({ kind: "launch", goesOn: null });
});

test("storage that is denied leaves a launch as it is", async () => {
  const denied = () => {
    throw new DOMException("denied");
  };
  expect(launched(QUERY, denied)).toMatchObject({ kind: "launch", goesOn: null });
  visitKeeper(readLaunch(QUERY)!, denied).over(null);
});
