/** What the tests of SCORM 2004 share: a course system that checks what it is told. */
import { Scorm2004API } from "scorm-again";
import type { Scorm2004Api } from "../../src/lms/scorm2004.ts";

/** An independent run-time: it checks each element's name, type and range, and remembers. */
export function courseSystem(earlier: Record<string, unknown> = {}) {
  const api = new Scorm2004API({ autocommit: false });
  api.loadFromFlattenedJSON(earlier as Parameters<typeof api.loadFromFlattenedJSON>[0], "");
  const faults: string[] = [];
  const checked = Object.fromEntries(
    (["Initialize", "Terminate", "GetValue", "SetValue", "Commit", "GetLastError"] as const).map((name) => [
      name,
      (...given: [string, string]) => {
        if (name === "GetLastError") return String(api.lmsGetLastError());
        const call = api[name] as (...each: string[]) => string | boolean;
        const answer = call.apply(api, given);
        const code = String(api.lmsGetLastError());
        // 403: a value that was never set is asked for.
        if (code !== "0" && code !== "403")
          faults.push(`${name} ${given.join(" ")}: ${api.lmsGetErrorString(code)}`);
        return answer;
      },
    ]),
  ) as unknown as Scorm2004Api;
  return { api, checked, faults };
}
