/** The requests that a visit makes to its record store (xAPI 1.0.3), and what cmi5 (10.0, 11.0) keeps there. */
import type { Launch } from "./cmi5-launch.ts";

export type Fetch = (url: string, init: RequestInit) => Promise<Response>;
export type Template = Readonly<Record<string, unknown>>;

/** What we say by cmi5's own verbs. */
const SAID = ["initialized", "completed", "passed", "failed", "terminated"] as const;
export type Verb = (typeof SAID)[number];

/** What the course system says of this launch. */
export interface LaunchData {
  /** The course system's part of every statement's context, its session included. */
  readonly contextTemplate: Template;
  readonly launchMode: "Normal" | "Browse" | "Review";
  /** The course system's own mark, 0 to 1, which comes before the course's; null = none. */
  readonly masteryScore: number | null;
}

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
  const read = async (token: string, name: string): Promise<Record<string, unknown>> => {
    const answer = await ask(documentAddress(name), { method: "GET", headers: headers(token) });
    return answer.ok ? ((await answer.json()) as Record<string, unknown>) : {};
  };
  return {
    async openVisit() {
      const answer = await ask(launch.fetch, { method: "POST" });
      return ((await answer.json()) as { "auth-token"?: string })["auth-token"] || null;
    },
    async readLaunchData(token) {
      const { contextTemplate, launchMode, masteryScore } = await read(token, "LMS.LaunchData");
      return {
        contextTemplate: (contextTemplate as Template | undefined) ?? {},
        launchMode: launchMode === "Browse" || launchMode === "Review" ? launchMode : "Normal",
        masteryScore: typeof masteryScore === "number" ? masteryScore : null,
      };
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
      // 409: there is one of this id already (xAPI 1.0.3, part two, 3.3).
      return answer.ok || answer.status === 409;
    },
    async readProgress(token) {
      const { text, said } = await read(token, STATE_ID);
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
