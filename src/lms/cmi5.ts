/** A visit's record by cmi5 (on xAPI 1.0.3). Constants from memory of the specification. */
import { answeredStatement } from "./cmi5-answered.ts";
import type { Launch } from "./cmi5-launch.ts";
import { cmi5Store, type Fetch, type Template } from "./cmi5-store.ts";
import { passed, type RecordAdapter, type Report, shareRight } from "./record-adapter.ts";

const VERBS = {
  initialized: "http://adlnet.gov/expapi/verbs/initialized",
  completed: "http://adlnet.gov/expapi/verbs/completed",
  passed: "http://adlnet.gov/expapi/verbs/passed",
  failed: "http://adlnet.gov/expapi/verbs/failed",
  terminated: "http://adlnet.gov/expapi/verbs/terminated",
} as const;
type Verb = keyof typeof VERBS;
const CATEGORY = "https://w3id.org/xapi/cmi5/context/categories/";
/** ISO 8601 duration with hundredths. */
export const duration = (seconds: number): string => `PT${Math.max(0, seconds).toFixed(2)}S`;

/** What a record needs of the world. */
export interface World {
  readonly ask: Fetch;
  /** s on any clock */
  readonly now: () => number;
  /** The moment as RFC 3339. */
  readonly stamp: () => string;
  /** A fresh UUID for each statement. */
  readonly id: () => string;
}

export function cmi5Record(launch: Launch, world: World): RecordAdapter {
  const store = cmi5Store(launch, world.ask);
  const started = world.now();
  const elapsed = () => duration(world.now() - started);
  const sent = new Set<Verb>();
  /** The course system's part of every statement's context, its session included. */
  let template: Template = {};

  async function send(token: string, verb: Verb, result: object, keepalive = false): Promise<boolean> {
    // Each verb once, and none revokes a pass.
    if (sent.has(verb) || (verb === "failed" && sent.has("passed"))) return true;
    sent.add(verb);
    const statement = statementOf(launch, template, verb, result);
    return store.state(token, { id: world.id(), ...statement, timestamp: world.stamp() }, keepalive);
  }

  const answered = new Set<string>();
  async function sendTyped(token: string, typed: Report["typed"]): Promise<boolean> {
    let kept = true;
    for (const answer of typed) {
      const key = `${answer.lesson}#${answer.step}`;
      if (answered.has(key)) continue;
      answered.add(key);
      const statement = answeredStatement(launch, template, answer);
      const said = { id: world.id(), ...statement, timestamp: world.stamp() };
      kept = (await store.state(token, said, false)) && kept;
    }
    return kept;
  }

  const open = async (): Promise<string | null> => {
    const token = await store.openVisit();
    if (token === null) return null;
    template = await store.readTemplate(token);
    await send(token, "initialized", {});
    return token;
  };
  // One token for the visit; asked for once, as the specification allows.
  const opened = open().catch(() => null);

  async function keep(report: Report): Promise<boolean> {
    const token = await opened;
    if (token === null) return false;
    const written = await store.writeProgress(token, { text: report.text, place: report.place });
    const kept = (await sendTyped(token, report.typed)) && written;
    if (!report.completed) return kept;
    const won = passed(report.score);
    const scaled = Number(shareRight(report.score).toFixed(4));
    const judged = await send(token, won ? "passed" : "failed", {
      success: won,
      score: { scaled },
      duration: elapsed(),
    });
    return (await send(token, "completed", { completion: true, duration: elapsed() })) && judged && kept;
  }

  return {
    kind: "cmi5",
    load: async () => {
      const token = await opened;
      return token === null ? null : store.readProgress(token).catch(() => null);
    },
    report: (report) => keep(report).catch(() => false),
    close() {
      void opened
        .then((token) => token !== null && send(token, "terminated", { duration: elapsed() }, true))
        .catch(() => {});
    },
    now: null,
    erase: null,
  };
}

/** A statement without what differs each time it is sent: its id and its moment. */
function statementOf(launch: Launch, template: Template, verb: Verb, result: object) {
  const moveOn = verb === "completed" || verb === "passed" || verb === "failed";
  const given = (template.contextActivities ?? {}) as { category?: unknown[] };
  const category = [
    ...(given.category ?? []),
    { id: `${CATEGORY}cmi5` },
    ...(moveOn ? [{ id: `${CATEGORY}moveon` }] : []),
  ];
  return {
    actor: launch.actor,
    verb: { id: VERBS[verb], display: { en: verb } },
    object: { objectType: "Activity", id: launch.activityId },
    ...(Object.keys(result).length > 0 ? { result } : {}),
    context: {
      ...template,
      registration: launch.registration,
      contextActivities: { ...given, category },
    },
  };
}
