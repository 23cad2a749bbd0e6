/** A visit's record by cmi5 (Quartz, 1st edition, on xAPI 1.0.3); the rules in brackets are sections of its text. */
import { answeredStatement } from "./cmi5-answered.ts";
import type { OpenVisit, VisitKeeper } from "./cmi5-kept.ts";
import type { Launch } from "./cmi5-launch.ts";
import { type Cmi5Store, cmi5Store, type Fetch, type LaunchData, type Verb } from "./cmi5-store.ts";
import { duration } from "./duration.ts";
import {
  answerKey,
  passed,
  type RecordAdapter,
  type Report,
  type ReportedAnswer,
  shareRight,
  type VisitClock,
} from "./record-adapter.ts";

const VERBS: Readonly<Record<Verb, string>> = {
  initialized: "http://adlnet.gov/expapi/verbs/initialized",
  completed: "http://adlnet.gov/expapi/verbs/completed",
  passed: "http://adlnet.gov/expapi/verbs/passed",
  failed: "http://adlnet.gov/expapi/verbs/failed",
  terminated: "http://adlnet.gov/expapi/verbs/terminated",
};
const CATEGORY = "https://w3id.org/xapi/cmi5/context/categories/";
const MASTERY = "https://w3id.org/xapi/cmi5/context/extensions/masteryscore";

/** What a record needs of the world. */
export interface World extends VisitClock {
  readonly ask: Fetch;
  /** A fresh UUID for each statement. */
  readonly id: () => string;
  readonly keeper: VisitKeeper;
}

/** A visit under way: its token, what the course system says of it, what was said in earlier ones. */
interface Visit {
  readonly token: string;
  readonly data: LaunchData;
  readonly text: string | null;
  readonly before: readonly Verb[];
}

/** `goesOn`: the visit under way, where the page was loaded anew without its end. */
export function cmi5Record(launch: Launch, world: World, goesOn: OpenVisit | null = null): RecordAdapter {
  const store = cmi5Store(launch, world.ask);
  const started = world.now();
  const sent = new Set<Verb>(goesOn?.said);
  const { state, isKept } = stateOnce(store, world);

  /** True where it is kept, or not to be said. */
  async function send(visit: Visit, verb: Verb, result: object, keepalive = false): Promise<boolean> {
    if (!maySay(verb, sent, visit)) return true;
    // After the end nothing may follow, whether the store kept it or not.
    if (verb === "terminated") sent.add(verb);
    const statement = () => statementOf(launch, visit.data, verb, result);
    const kept = await state(visit.token, verb, statement, keepalive);
    if (kept) sent.add(verb);
    if (verb !== "terminated") remember(visit);
    return kept;
  }

  const remember = ({ token }: Visit) => {
    if (!ended) world.keeper.going({ token, said: [...sent] }, wayBack);
  };

  async function sendAnswers({ token, data }: Visit, answers: readonly ReportedAnswer[]): Promise<boolean> {
    for (const answer of answers) {
      if (sent.has("terminated")) return false;
      await state(token, answerKey(answer), () => answeredStatement(launch, data.contextTemplate, answer));
    }
    return answers.every((answer) => isKept(answerKey(answer)));
  }

  let records = true;
  let wayBack: string | null = null;
  let ended = false;
  // One token for the visit; asked for once, as the specification allows.
  const opened = openVisit(store, goesOn)
    .then(async (visit) => {
      if (visit) {
        records = visit.data.launchMode === "Normal";
        wayBack = visit.data.returnURL;
        remember(visit);
        await send(visit, "initialized", {});
      }
      return visit;
    })
    .catch(() => null);
  /** One report after the other: what one has said, the next must know. */
  let keeping: Promise<unknown> = opened;

  async function keep(report: Report): Promise<boolean> {
    const visit = await opened;
    if (visit === null) return false;
    // Looking round or back is not recorded (10.0).
    if (!records) return true;
    // First of all (9.3): without it the store is to have no other statement.
    const begun = await send(visit, "initialized", {});
    const answered = begun && (await sendAnswers(visit, report.answers));
    const judged = begun && (!report.completed || (await sendEnd(visit, report)));
    const said = [...new Set([...visit.before, ...sent])].filter((verb) => ONCE.includes(verb));
    const written = await store.writeProgress(visit.token, { text: report.text, place: report.place, said });
    return answered && judged && written;
  }

  async function sendEnd(visit: Visit, { score, passMark }: Report): Promise<boolean> {
    const elapsed = duration(world.now() - started);
    const won = passed(score, visit.data.masteryScore ?? passMark);
    const scaled = Number(shareRight(score).toFixed(4));
    const judgement = { success: won, score: { scaled }, duration: elapsed };
    const judged = won === null || (await send(visit, won ? "passed" : "failed", judgement));
    return (await send(visit, "completed", { completion: true, duration: elapsed })) && judged;
  }

  return {
    kind: "cmi5",
    longest: null,
    load: async () => (await opened)?.text ?? null,
    records: () => records,
    now: null,
    report(report) {
      const kept = keeping.then(() => keep(report)).catch(() => false);
      keeping = kept;
      return kept;
    },
    async close() {
      ended = true;
      world.keeper.over(wayBack);
      const visit = await opened;
      const elapsed = { duration: duration(world.now() - started) };
      if (visit) await send(visit, "terminated", elapsed, true).catch(() => {});
    },
    wayBack: () => wayBack,
    erase: null,
  };
}

/** States each thing until the store has kept it: again as the same statement, so that one whose answer was lost is not kept twice. */
function stateOnce(store: Cmi5Store, { id, stamp }: World) {
  const made = new Map<string, object>();
  const kept = new Set<string>();
  return {
    isKept: (key: string) => kept.has(key),
    async state(token: string, key: string, statement: () => object, keepalive = false): Promise<boolean> {
      if (kept.has(key)) return true;
      const whole = made.get(key) ?? { id: id(), ...statement(), timestamp: stamp() };
      made.set(key, whole);
      const isKept = await store.state(token, whole, keepalive).catch(() => false);
      if (isKept) kept.add(key);
      return isKept;
    },
  };
}

async function openVisit(store: Cmi5Store, goesOn: OpenVisit | null): Promise<Visit | null> {
  const token = goesOn?.token ?? (await store.openVisit());
  if (token === null) return null;
  // Asked for because it must be (11.0); the language was chosen by whoever made the course.
  const [data] = await Promise.all([store.readLaunchData(token), store.readPreferences(token)]);
  const { text, said } = await store.readProgress(token);
  return { token, data, text, before: said };
}

/** Once in all visits of one registration (9.3.3, 9.3.4). */
const ONCE: readonly Verb[] = ["completed", "passed"];

/** No verb twice in a visit and passed or failed, not both (9.3); none revokes a pass. */
function maySay(verb: Verb, sent: ReadonlySet<Verb>, { before }: Visit): boolean {
  if (sent.has(verb) || (ONCE.includes(verb) && before.includes(verb))) return false;
  if (verb === "initialized") return true;
  if (sent.has("terminated")) return false;
  if (verb === "terminated") return true;
  if (verb === "failed") return !sent.has("passed") && !before.includes("passed");
  return verb !== "passed" || !sent.has("failed");
}

/** A statement without what differs each time it is sent: its id and its moment. */
function statementOf(
  launch: Launch,
  { contextTemplate, masteryScore }: LaunchData,
  verb: Verb,
  result: object,
) {
  const judged = verb === "passed" || verb === "failed";
  const given = contextTemplate.contextActivities ?? {};
  const category = [
    ...(given.category ?? []),
    { id: `${CATEGORY}cmi5` },
    ...(judged || verb === "completed" ? [{ id: `${CATEGORY}moveon` }] : []),
  ];
  const mastery = judged && masteryScore !== null ? { [MASTERY]: masteryScore } : {};
  return {
    actor: launch.actor,
    verb: { id: VERBS[verb], display: { en: verb } },
    object: { objectType: "Activity", id: launch.activityId },
    ...(Object.keys(result).length > 0 ? { result } : {}),
    context: {
      ...contextTemplate,
      registration: launch.registration,
      contextActivities: { ...given, category },
      extensions: { ...mastery, ...contextTemplate.extensions },
    },
  };
}
