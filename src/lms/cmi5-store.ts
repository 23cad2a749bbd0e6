/** The requests that a visit makes to its record store (xAPI 1.0.3). Constants from memory of the specification. */
import type { Launch } from "./cmi5-launch.ts";

export type Fetch = (url: string, init: RequestInit) => Promise<Response>;
export type Template = Readonly<Record<string, unknown>>;

/** The document in which our resume data lies. */
const STATE_ID = "lungward.progress";

/** Each may reject when the store cannot be reached. */
export interface Cmi5Store {
  /** The visit's token; null when the launch is refused. */
  openVisit(): Promise<string | null>;
  readTemplate(token: string): Promise<Template>;
  state(token: string, statement: object, keepalive: boolean): Promise<boolean>;
  readProgress(token: string): Promise<string | null>;
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
    async readTemplate(token) {
      const { contextTemplate } = await read(token, "LMS.LaunchData");
      return (contextTemplate as Template | undefined) ?? {};
    },
    async state(token, statement, keepalive) {
      const body = JSON.stringify(statement);
      const answer = await ask(`${launch.endpoint}statements`, {
        method: "POST",
        headers: headers(token),
        body,
        keepalive,
      });
      return answer.ok;
    },
    async readProgress(token) {
      const { text } = await read(token, STATE_ID);
      return (text as string | undefined) ?? null;
    },
    async writeProgress(token, progress) {
      const body = JSON.stringify(progress);
      const init = { method: "PUT", headers: headers(token), body };
      return (await ask(documentAddress(STATE_ID), init)).ok;
    },
  };
}
