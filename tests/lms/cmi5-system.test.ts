// @vitest-environment happy-dom
/** The tests' own course system, against an assignable unit that is not ours. */
import Cmi5 from "@xapi/cmi5/dist/Cmi5.esm.js";
import { afterEach, expect, test } from "vitest";
import { nameOf } from "./cmi5-rules.ts";
import { type Cmi5System, cmi5System, type LaunchOptions } from "./course-systems/cmi5-system.ts";
import { serveHttp } from "./course-systems/serve-http.ts";

const structure = (attributes: string) => `<?xml version="1.0" encoding="UTF-8"?>
<courseStructure xmlns="https://w3id.org/xapi/profiles/cmi5/v1/CourseStructure.xsd">
  <course id="urn:invented:course"><title><langstring lang="en">C</langstring></title><description><langstring lang="en">C</langstring></description></course>
  <au id="urn:invented:one" ${attributes}><title><langstring lang="en">A</langstring></title><description><langstring lang="en">A</langstring></description><url>one.html?x=1</url></au>
</courseStructure>`;

const open: (() => Promise<unknown>)[] = [];
afterEach(async () => {
  for (const close of open.splice(0)) await close();
});

async function launched(attributes: string, options: LaunchOptions = {}) {
  let system: Cmi5System | null = null;
  let visit: ReturnType<Cmi5System["launch"]> | null = null;
  const server = await serveHttp((request) => visit!.session.answer(request));
  open.push(server.close);
  system = cmi5System(structure(attributes), server.home);
  const [unit] = system.units;
  visit = system.launch(unit!, options);
  const words = Object.fromEntries(new URL(visit.address, "https://package.example").searchParams);
  const { endpoint, fetch, actor, registration, activityId } = words as Record<string, string>;
  const other = new Cmi5({
    endpoint: endpoint!,
    fetch: fetch!,
    actor: JSON.parse(actor!),
    registration: registration!,
    activityId: activityId!,
  });
  return { system, unit: unit!, session: visit.session, other, words };
}

test("a visit of another's unit is taken: token, launch data, statements in order, and the unit is satisfied", async () => {
  const { system, unit, session, other, words } = await launched(
    'moveOn="CompletedAndPassed" masteryScore="0.8"',
    {
      returnURL: "https://course.example/back",
    },
  );
  expect(words.x).toBe("1");
  await other.initialize();
  expect(other.launchData).toMatchObject({
    masteryScore: 0.8,
    moveOn: "CompletedAndPassed",
    launchMode: "Normal",
    returnURL: "https://course.example/back",
  });
  await other.pass(0.9);
  expect(system.isSatisfied(unit)).toBe(false);
  await other.complete();
  expect(system.isSatisfied(unit)).toBe(true);
  await other.terminate();
  expect(session.statements.map(nameOf)).toEqual(["initialized", "passed", "completed", "terminated"]);
  expect(session.refused).toEqual([]);
});

type Other = Awaited<ReturnType<typeof launched>>["other"];
/** It keeps some rules by itself, unless it is made to mishear the launch data. */
const deaf = (other: Other, heard: object): Other => {
  Object.assign(other.launchData, heard);
  return other;
};
const MARKED = 'moveOn="Passed" masteryScore="0.8"';

test.each<[string, RegExp, LaunchOptions, (other: Other) => Promise<unknown>]>([
  ["passed below the mark", /9\.3\.4/, {}, (other) => deaf(other, { masteryScore: 0.1 }).pass(0.5)],
  ["failed above the mark", /9\.3\.4/, {}, (other) => other.fail(0.9)],
  ["passed and failed", /not both/, {}, (other) => other.pass(1).then(() => other.fail(0.1))],
  ["completed twice", /no verb twice/, {}, (other) => other.complete().then(() => other.complete())],
  [
    "a verdict of who looks round",
    /10\.0/,
    { launchMode: "Browse" },
    (other) => deaf(other, { launchMode: "Normal" }).pass(1),
  ],
  ["what follows the end", /9\.3\.8/, {}, (other) => other.terminate().then(() => other.progress(50))],
  ["a second beginning", /8\.2\.3/, {}, (other) => other.initialize()],
])("of another's unit is refused: %s", async (_, rule, options, misstep) => {
  const { session, other } = await launched(MARKED, options);
  await other.initialize();
  await misstep(other).catch(() => {});
  expect(
    session.refused.some((why) => rule.test(why)),
    session.refused.join(),
  ).toBe(true);
});

test("nothing is taken without the token, and the launch data stay as they are", async () => {
  const { session, words } = await launched(MARKED);
  const state = `${words.endpoint}activities/state?${new URLSearchParams({
    stateId: "LMS.LaunchData",
    activityId: words.activityId!,
    registration: words.registration!,
    agent: words.actor!,
  })}`;
  const headers = { "X-Experience-API-Version": "1.0.3", Authorization: `Basic ${session.token}` };
  expect((await session.answer(new Request(state))).status).toBe(401);
  expect((await session.answer(new Request(state, { headers }))).status).toBe(200);
  const change = { headers, method: "PUT", body: "{}" };
  expect((await session.answer(new Request(state, change))).status).toBe(403);
});

test.each([
  ['moveOn="Done"', "moveOn"],
  ['masteryScore="80"', "masteryScore"],
])("a course structure with %s is refused", (attributes, key) => {
  expect(() => cmi5System(structure(attributes), "https://course.example")).toThrow(key);
});
