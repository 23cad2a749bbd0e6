/** What the tests of cmi5 share: a visit, and the store that it reports to. */
import { cmi5Record } from "../../src/lms/cmi5.ts";
import type { OpenVisit, VisitKeeper } from "../../src/lms/cmi5-kept.ts";
import { readLaunch } from "../../src/lms/cmi5-launch.ts";
import type { Statement } from "./cmi5-rules.ts";

export const ACTOR = { account: { homePage: "https://course.example", name: "learner-1" } };
export const QUERY = `?${new URLSearchParams({
  setting: "study",
  endpoint: "https://lrs.example/xapi",
  fetch: "https://course.example/token",
  actor: JSON.stringify(ACTOR),
  registration: "6a5a3a0e-0000-4000-8000-000000000001",
  activityId: "https://course.example/activity",
})}`;

/** What the next statement meets, once; the id of the one that met it. */
export interface Outage {
  now: number | "thrown" | null;
  lost?: string | undefined;
}

/** A small store of documents and statements, such as a learning record store keeps (xAPI 1.0.3). */
export function recordStore(launchData: object = {}, outage: Outage = { now: null }) {
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

/** A window that keeps nothing. */
export const FORGETFUL: VisitKeeper = { going: () => {}, over: () => {} };

export const record = (
  store: ReturnType<typeof recordStore>,
  now = () => 0,
  keeper = FORGETFUL,
  goesOn: OpenVisit | null = null,
) => {
  let count = 0;
  return cmi5Record(
    readLaunch(QUERY)!,
    { ask: store.ask, now, stamp: () => "2026-11-25T12:00:00Z", id: () => `id-${count++}`, keeper },
    goesOn,
  );
};
export const verbs = (store: ReturnType<typeof recordStore>) =>
  store.statements.map(({ verb }) => verb.id.split("/").pop());
export const report = (right: number, completed: boolean) => ({
  text: "abc",
  place: "a#b",
  score: { right, asked: 10 },
  passMark: 0.6,
  answers: [],
  progress: completed ? 1 : 0,
  completed,
});

export const closed = async (voice: ReturnType<typeof record>) => {
  voice.close();
  await new Promise((done) => setTimeout(done, 5));
};
