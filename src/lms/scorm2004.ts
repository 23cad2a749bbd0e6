/** A visit's record by SCORM 2004, 4th edition (ADL 2009). Constants from memory of the specification. */
import { duration } from "./duration.ts";
import { passed, type RecordAdapter, type Report, shareRight, type VisitClock } from "./record-adapter.ts";
import { interaction2004 } from "./scorm-interactions.ts";
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
export interface Scorm2004Api {
  Initialize(empty: ""): string | boolean;
  Terminate(empty: ""): string | boolean;
  GetValue(element: string): string;
  GetLastError(): string;
  SetValue(element: string, value: string): string | boolean;
  Commit(empty: ""): string | boolean;
}

/** Characters of `cmi.suspend_data` and of `cmi.location`. */
const LONGEST_SUSPEND_DATA = 64_000;
const LONGEST_LOCATION = 1000;

export function scorm2004Record(api: Scorm2004Api, { now, stamp }: VisitClock): RecordAdapter {
  const runTime: RunTime = {
    get: (element) => api.GetValue(element),
    set: (element, value) => said(api.SetValue(element, value)),
    commit: () => said(api.Commit("")),
  };
  const { get, set, commit } = runTime;
  const started = now();
  const open = said(api.Initialize(""));
  let closed = !open;
  // First of all: not every system forgets the error of an earlier call.
  const earlier = open ? get("cmi.suspend_data") : "";
  const known = Boolean(earlier) || isNone(api.GetLastError());
  const records = !open || isRecorded(get("cmi.mode"));
  if (open && known && records && ["unknown", "not attempted", ""].includes(get("cmi.completion_status"))) {
    set("cmi.completion_status", "incomplete");
    commit();
  }
  const ownMark = open ? Number.parseFloat(get("cmi.scaled_passing_score")) : Number.NaN;
  const report = scormReport(runTime, (answer, index) => interaction2004(answer, index, stamp()));
  return {
    kind: "scorm",
    longest: LONGEST_SUSPEND_DATA,
    load: async () => earlier || null,
    records: () => records,
    now: null,
    report: async (given) => {
      if (closed) return false;
      if (!records) return true;
      if (!known) return false;
      const judged = Number.isNaN(ownMark) ? given : { ...given, passMark: ownMark };
      return report(valuesOf(judged), given.answers);
    },
    async close() {
      if (closed) return;
      closed = true;
      set("cmi.session_time", duration(now() - started));
      set("cmi.exit", "suspend");
      commit();
      api.Terminate("");
    },
    wayBack: () => null,
    erase: null,
  };
}

function valuesOf(report: Report): Values {
  const { text, place, score, passMark, progress, completed } = report;
  const won = completed ? passed(score, passMark) : null;
  return [
    ...(text.length <= LONGEST_SUSPEND_DATA ? ([["cmi.suspend_data", text]] as const) : []),
    ["cmi.location", place.slice(0, LONGEST_LOCATION)],
    ...scoreValues("cmi.score", score),
    ...(score.asked === 0
      ? []
      : [["cmi.score.scaled", String(Number(shareRight(score).toFixed(4)))] as const]),
    ["cmi.progress_measure", String(Number(progress.toFixed(4)))],
    ["cmi.completion_status", completed ? "completed" : "incomplete"],
    ["cmi.success_status", won === null ? "unknown" : won ? "passed" : "failed"],
  ];
}
