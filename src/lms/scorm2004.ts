/** A visit's record by SCORM 2004, 4th edition (ADL 2009). Constants from memory of the specification. */
import { duration } from "./duration.ts";
import {
  answerKey,
  passed,
  type RecordAdapter,
  type Report,
  shareRight,
  type VisitClock,
} from "./record-adapter.ts";
import { interaction2004 } from "./scorm-interactions.ts";
import { scoreValues, type Values } from "./scorm-report.ts";

/** The run-time environment's calls that we use; each answers "true" or "false". */
export interface Scorm2004Api {
  Initialize(empty: ""): string | boolean;
  Terminate(empty: ""): string | boolean;
  GetValue(element: string): string;
  SetValue(element: string, value: string): string | boolean;
  Commit(empty: ""): string | boolean;
}

/** Characters of `cmi.suspend_data` and of `cmi.location`. */
const LONGEST_SUSPEND_DATA = 64_000;
const LONGEST_LOCATION = 1000;

export function scorm2004Record(api: Scorm2004Api, { now, stamp }: VisitClock): RecordAdapter {
  const said = (answer: string | boolean): boolean => String(answer) === "true";
  const started = now();
  const open = said(api.Initialize(""));
  let closed = !open;
  const sent = new Set<string>();
  // Looking round or back is not to change what was recorded.
  const records = open && !["browse", "review"].includes(api.GetValue("cmi.mode"));
  if (records && ["unknown", "not attempted", ""].includes(api.GetValue("cmi.completion_status"))) {
    api.SetValue("cmi.completion_status", "incomplete");
    api.Commit("");
  }
  const ownMark = open ? Number.parseFloat(api.GetValue("cmi.scaled_passing_score")) : Number.NaN;
  const answersOf = ({ answers }: Report) => {
    const unsent = answers.filter((answer) => !sent.has(answerKey(answer)));
    if (unsent.length === 0) return [];
    const next = Number(api.GetValue("cmi.interactions._count")) || 0;
    return unsent.flatMap((answer, index) => {
      sent.add(answerKey(answer));
      return interaction2004(answer, next + index, stamp());
    });
  };
  return {
    kind: "scorm",
    longest: LONGEST_SUSPEND_DATA,
    load: async () => (open ? api.GetValue("cmi.suspend_data") || null : null),
    now: null,
    report: async (report) => {
      if (closed) return false;
      const judged = Number.isNaN(ownMark) ? report : { ...report, passMark: ownMark };
      const values = records ? [...valuesOf(judged), ...answersOf(judged)] : [];
      return values.every(([element, value]) => said(api.SetValue(element, value))) && said(api.Commit(""));
    },
    close() {
      if (closed) return;
      closed = true;
      api.SetValue("cmi.session_time", duration(now() - started));
      api.SetValue("cmi.exit", "suspend");
      api.Commit("");
      api.Terminate("");
    },
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
