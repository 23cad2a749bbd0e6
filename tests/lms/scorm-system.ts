/** What the tests of SCORM 1.2 share: a course system that checks what it is told. */
import { Scorm12API } from "scorm-again";
import type { ScormApi } from "../../src/lms/scorm.ts";

export const stamp = () => "2026-11-29T09:30:05.123Z";
export const REPORT = {
  text: "x",
  place: "a#b",
  score: { right: 1, asked: 2 },
  passMark: 0.6,
  answers: [],
  progress: 0,
  completed: false,
};

/** An independent run-time double: it checks each element's name, type and range, and remembers. */
export function courseSystem(earlier?: Record<string, unknown>) {
  const api = new Scorm12API({ autocommit: false });
  if (earlier) api.loadFromFlattenedJSON(earlier as Parameters<typeof api.loadFromFlattenedJSON>[0], "");
  const faults: string[] = [];
  const checked = Object.fromEntries(
    (
      ["LMSInitialize", "LMSFinish", "LMSGetValue", "LMSSetValue", "LMSCommit", "LMSGetLastError"] as const
    ).map((name) => [
      name,
      (...given: [string, string]) => {
        const answer = (api[name] as (...each: string[]) => string | boolean)(...given);
        if (api.LMSGetLastError() !== "0")
          faults.push(`${name} ${given.join(" ")}: ${api.LMSGetErrorString(api.LMSGetLastError())}`);
        return answer;
      },
    ]),
  ) as unknown as ScormApi;
  return { api, checked, faults };
}
