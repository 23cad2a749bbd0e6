/** A visit's record by SCORM 1.2 (ADL 2001). Constants from memory of the specification. */
import { passed, type RecordAdapter, type Report, type VisitClock } from "./record-adapter.ts";
import { interaction12 } from "./scorm-interactions.ts";
import {
  isNone,
  isRecorded,
  type RunTime,
  said,
  scoreValues,
  scormReport,
  type Values,
} from "./scorm-report.ts";

/** The run-time environment's calls that we use; but for values and error codes each answers "true" or "false". */
export interface ScormApi {
  LMSInitialize(empty: ""): string | boolean;
  LMSFinish(empty: ""): string | boolean;
  LMSGetValue(element: string): string;
  LMSGetLastError(): string;
  LMSSetValue(element: string, value: string): string | boolean;
  LMSCommit(empty: ""): string | boolean;
}

/** Characters of `cmi.suspend_data` (SCORM 1.2 run-time environment, CMIString4096). */
export const LONGEST_SUSPEND_DATA = 4096;
/** Characters of `cmi.core.lesson_location` (CMIString255). */
const LONGEST_LOCATION = 255;

export function scormRecord(api: ScormApi, { now, stamp }: VisitClock): RecordAdapter {
  const runTime: RunTime = {
    get: (element) => api.LMSGetValue(element),
    set: (element, value) => said(api.LMSSetValue(element, value)),
    commit: () => said(api.LMSCommit("")),
  };
  const { get, set, commit } = runTime;
  const started = now();
  const open = said(api.LMSInitialize(""));
  let closed = !open;
  // First of all: not every system forgets the error of an earlier call.
  const earlier = open ? get("cmi.suspend_data") : "";
  const known = Boolean(earlier) || isNone(api.LMSGetLastError());
  const records = !open || isRecorded(get("cmi.core.lesson_mode"));
  if (open && known && records && ["not attempted", "unknown", ""].includes(get("cmi.core.lesson_status"))) {
    set("cmi.core.lesson_status", "incomplete");
    commit();
  }
  const report = scormReport(runTime, (answer, index) => interaction12(answer, index, stamp()));
  return {
    kind: "scorm",
    longest: LONGEST_SUSPEND_DATA,
    load: async () => earlier || null,
    records: () => records,
    now: null,
    report: async (given) => !closed && (!records || (known && report(valuesOf(given), given.answers))),
    async close() {
      if (closed) return;
      closed = true;
      set("cmi.core.session_time", timespan(now() - started));
      set("cmi.core.exit", "suspend");
      commit();
      api.LMSFinish("");
    },
    wayBack: () => null,
    erase: null,
  };
}

function valuesOf({ text, place, score, passMark, completed }: Report): Values {
  const won = passed(score, passMark);
  const done = won === null ? "completed" : won ? "passed" : "failed";
  const resume = text.length <= LONGEST_SUSPEND_DATA ? ([["cmi.suspend_data", text]] as const) : [];
  return [
    ...resume,
    ["cmi.core.lesson_location", place.slice(0, LONGEST_LOCATION)],
    ...scoreValues("cmi.core.score", score),
    ["cmi.core.lesson_status", completed ? done : "incomplete"],
  ];
}

/** CMITimespan, HHHH:MM:SS.SS */
export function timespan(seconds: number): string {
  const whole = Math.max(0, Math.min(seconds, 9999 * 3600));
  const two = (value: number) => String(Math.floor(value)).padStart(2, "0");
  const hundredths = two(Math.floor((whole % 1) * 100));
  return `${String(Math.floor(whole / 3600)).padStart(4, "0")}:${two((whole / 60) % 60)}:${two(whole % 60)}.${hundredths}`;
}
