/** The requests that a visit makes to its record store (xAPI 1.0.3), and what cmi5 (10.0, 11.0) keeps there. */
import * as v from "valibot";
import type { Launch } from "./cmi5-launch.ts";

export type Fetch = (url: string, init: RequestInit) => Promise<Response>;

/** What we say by cmi5's own verbs. */
export const SAID = ["initialized", "completed", "passed", "failed", "terminated"] as const;
export type Verb = (typeof SAID)[number];

/** One that a browser opens; an address that runs a script is none. */
export const webAddress = v.pipe(v.string(), v.url(), v.regex(/^https?:/i));

const record = v.record(v.string(), v.unknown());
const content = v.fallback(v.pipe(v.string(), v.parseJson(), record), {});
const contextActivities = v.looseObject({
  // One alone may stand without a list (xAPI 1.0.3, part two, 2.4.6.2).
  category: v.optional(
    v.fallback(
      v.union([
        v.array(v.unknown()),
        v.pipe(
          record,
          v.transform((one): unknown[] => [one]),
        ),
      ]),
      [],
    ),
  ),
});
/** What the course system says of this launch; what cannot be meant counts as not said. */
const launchData = v.object({
  /** The course system's part of every statement's context, its session included. */
  contextTemplate: v.fallback(
    v.looseObject({
      contextActivities: v.optional(v.fallback(contextActivities, {})),
      extensions: v.optional(v.fallback(record, {})),
    }),
    {},
  ),
  launchMode: v.fallback(v.picklist(["Normal", "Browse", "Review"]), "Normal"),
  /** The course system's own mark, 0 to 1, which comes before the course's; null = none. */
  masteryScore: v.fallback(v.nullable(v.pipe(v.number(), v.minValue(0), v.maxValue(1))), null),
  /** Where who leaves is to go; null = nowhere. */
  returnURL: v.fallback(v.nullable(webAddress), null),
});
export type LaunchData = v.InferOutput<typeof launchData>;

interface KeptDocument {
  readonly text: string | null;
  /** Said in earlier visits of this registration. */
  readonly said: readonly Verb[];
}

/** The document in which our resume data lies. */
const STATE_ID = "lungward.progress";

/** Each may reject when the store cannot be reached. */
export interface Cmi5Store {
  /** The visit's token; null when the launch is refused. */
  openVisit(): Promise<string | null>;
  readLaunchData(token: string): Promise<LaunchData>;
  /** The learner's languages and sound; one who has set none is no fault. */
  readPreferences(token: string): Promise<void>;
  /** False where the store has not kept it. */
  state(token: string, statement: object, keepalive: boolean): Promise<boolean>;
  /** Rejects where it cannot be known: what is kept there must not be overwritten. */
  readProgress(token: string): Promise<KeptDocument>;
  writeProgress(token: string, progress: object): Promise<boolean>;
}

export function cmi5Store(launch: Launch, ask: Fetch): Cmi5Store {
  const headers = (token: string) => ({
    Authorization: `Basic ${token}`,
    "Content-Type": "application/json",
    "X-Experience-API-Version": "1.0.3",
  });
  const documentAddress = (name: string) => {
    const query = new URLSearchParams({
      stateId: name,
      activityId: launch.activityId,
      agent: JSON.stringify(launch.actor),
      registration: launch.registration,
    });
    return `${launch.endpoint}activities/state?${query}`;
  };
  const document = (token: string, name: string): Promise<Response> =>
    ask(documentAddress(name), { method: "GET", headers: headers(token) });
  const contentOf = async (answer: Response): Promise<Record<string, unknown>> =>
    answer.ok ? v.parse(content, await answer.text()) : {};
  return {
    async openVisit() {
      const { "auth-token": token } = await contentOf(await ask(launch.fetch, { method: "POST" }));
      return typeof token === "string" && token !== "" ? token : null;
    },
    async readLaunchData(token) {
      return v.parse(launchData, await contentOf(await document(token, "LMS.LaunchData")));
    },
    async readPreferences(token) {
      const query = new URLSearchParams({
        profileId: "cmi5LearnerPreferences",
        agent: JSON.stringify(launch.actor),
      });
      const address = `${launch.endpoint}agents/profile?${query}`;
      await ask(address, { method: "GET", headers: headers(token) }).catch(() => {});
    },
    async state(token, statement, keepalive) {
      const body = JSON.stringify(statement);
      const answer = await ask(`${launch.endpoint}statements`, {
        method: "POST",
        headers: headers(token),
        body,
        keepalive,
      });
      // 409: there is one of this id already (xAPI 1.0.3, part three, 2.1).
      return answer.ok || answer.status === 409;
    },
    async readProgress(token) {
      const answer = await document(token, STATE_ID);
      // 404: none is kept. Any other refusal leaves open what is.
      if (!answer.ok && answer.status !== 404) throw new Error(`${STATE_ID}: found status ${answer.status}`);
      const { text, said } = await contentOf(answer);
      return {
        text: typeof text === "string" ? text : null,
        said: Array.isArray(said) ? SAID.filter((verb) => said.includes(verb)) : [],
      };
    },
    async writeProgress(token, progress) {
      const body = JSON.stringify(progress);
      const init = { method: "PUT", headers: headers(token), body };
      return (await ask(documentAddress(STATE_ID), init)).ok;
    },
  };
}
