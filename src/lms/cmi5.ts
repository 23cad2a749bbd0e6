/** cmi5 (Quartz, on xAPI 1.0.3): launched by an address with endpoint, fetch, actor, registration and activityId. */
import { passed, type RecordAdapter, type Report, shareRight } from "./record-adapter.ts";

export interface Launch {
  readonly endpoint: string;
  readonly fetch: string;
  readonly actor: unknown;
  readonly registration: string;
  readonly activityId: string;
}

type Fetch = (url: string, init: RequestInit) => Promise<Response>;

const VERBS = {
  initialized: "http://adlnet.gov/expapi/verbs/initialized",
  completed: "http://adlnet.gov/expapi/verbs/completed",
  passed: "http://adlnet.gov/expapi/verbs/passed",
  failed: "http://adlnet.gov/expapi/verbs/failed",
  terminated: "http://adlnet.gov/expapi/verbs/terminated",
} as const;
type Verb = keyof typeof VERBS;
const CATEGORY = "https://w3id.org/xapi/cmi5/context/categories/";
/** The document that holds our resume data. */
const STATE_ID = "lungward.progress";

/** null when the page was not launched by a course system. */
export function readLaunch(query: string): Launch | null {
  const words = new URLSearchParams(query);
  const [endpoint, fetch, actor, registration, activityId] = [
    "endpoint",
    "fetch",
    "actor",
    "registration",
    "activityId",
  ].map((name) => words.get(name));
  if (!endpoint || !fetch || !actor || !registration || !activityId) return null;
  try {
    if (![endpoint, fetch].every((each) => /^https?:$/.test(new URL(each).protocol))) return null;
    return {
      endpoint: endpoint.replace(/\/?$/, "/"),
      fetch,
      actor: JSON.parse(actor),
      registration,
      activityId,
    };
  } catch {
    return null;
  }
}

/** ISO 8601 duration with hundredths. */
export const duration = (seconds: number): string => `PT${Math.max(0, seconds).toFixed(2)}S`;

/** `ask` sends a request; `now`: s on any clock; `stamp`: the moment as RFC 3339; `id`: a fresh UUID for each statement. */
export function cmi5Record(
  launch: Launch,
  ask: Fetch,
  now: () => number,
  stamp: () => string,
  id: () => string,
): RecordAdapter {
  const started = now();
  const sent = new Set<Verb>();
  /** The course system's part of every statement's context, its session included. */
  let template: Record<string, unknown> = {};
  // One token per visit, requested once, as the specification demands.
  const opened = (async (): Promise<string | null> => {
    try {
      const answer = await ask(launch.fetch, { method: "POST" });
      const token = ((await answer.json()) as { "auth-token"?: string })["auth-token"];
      if (!token) return null;
      template = await readTemplate(token);
      await send(token, "initialized", {});
      return token;
    } catch {
      return null;
    }
  })();

  const headers = (token: string) => ({
    Authorization: `Basic ${token}`,
    "Content-Type": "application/json",
    "X-Experience-API-Version": "1.0.3",
  });
  const stateAddress = (name: string) => {
    const query = new URLSearchParams({
      stateId: name,
      activityId: launch.activityId,
      agent: JSON.stringify(launch.actor),
      registration: launch.registration,
    });
    return `${launch.endpoint}activities/state?${query}`;
  };

  async function readTemplate(token: string): Promise<Record<string, unknown>> {
    const answer = await ask(stateAddress("LMS.LaunchData"), { method: "GET", headers: headers(token) });
    const data = answer.ok ? ((await answer.json()) as { contextTemplate?: Record<string, unknown> }) : {};
    return data.contextTemplate ?? {};
  }

  async function send(token: string, verb: Verb, result: object, keepalive = false): Promise<boolean> {
    // Each verb once, and none revokes a pass.
    if (sent.has(verb) || (verb === "failed" && sent.has("passed"))) return true;
    sent.add(verb);
    const moveOn = verb === "completed" || verb === "passed" || verb === "failed";
    const given = (template.contextActivities ?? {}) as { category?: unknown[] };
    const category = [
      ...(given.category ?? []),
      { id: `${CATEGORY}cmi5` },
      ...(moveOn ? [{ id: `${CATEGORY}moveon` }] : []),
    ];
    const statement = {
      id: id(),
      actor: launch.actor,
      verb: { id: VERBS[verb], display: { en: verb } },
      object: { objectType: "Activity", id: launch.activityId },
      ...(Object.keys(result).length > 0 ? { result } : {}),
      context: {
        ...template,
        registration: launch.registration,
        contextActivities: { ...given, category },
      },
      timestamp: stamp(),
    };
    const answer = await ask(`${launch.endpoint}statements`, {
      method: "POST",
      headers: headers(token),
      body: JSON.stringify(statement),
      keepalive,
    });
    return answer.ok;
  }

  async function keep(report: Report): Promise<boolean> {
    const token = await opened;
    if (token === null) return false;
    const body = JSON.stringify({ text: report.text, place: report.place });
    const answer = await ask(stateAddress(STATE_ID), { method: "PUT", headers: headers(token), body });
    if (!report.completed) return answer.ok;
    const time = duration(now() - started);
    const won = passed(report.score);
    const scaled = Number(shareRight(report.score).toFixed(4));
    const judged = await send(token, won ? "passed" : "failed", {
      success: won,
      score: { scaled },
      duration: time,
    });
    return (await send(token, "completed", { completion: true, duration: time })) && judged && answer.ok;
  }

  return {
    kind: "cmi5",
    load: async () => {
      const token = await opened;
      if (token === null) return null;
      try {
        const answer = await ask(stateAddress(STATE_ID), { method: "GET", headers: headers(token) });
        return answer.ok ? (((await answer.json()) as { text?: string }).text ?? null) : null;
      } catch {
        return null;
      }
    },
    report: async (report) => {
      try {
        return await keep(report);
      } catch {
        return false;
      }
    },
    close() {
      void opened
        .then(
          (token) =>
            token !== null && send(token, "terminated", { duration: duration(now() - started) }, true),
        )
        .catch(() => {});
    },
    erase: null,
  };
}
