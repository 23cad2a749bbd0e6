/** SCORM 1.2 (ADL 2001): the course system's `API` object, found in a parent or opener window. */
import { passed, type RecordAdapter, type Report, shareRight } from "./record-adapter.ts";

/** The run-time environment's calls that we use; each answers "true" or "false". */
export interface ScormApi {
  LMSInitialize(empty: ""): string | boolean;
  LMSFinish(empty: ""): string | boolean;
  LMSGetValue(element: string): string;
  LMSSetValue(element: string, value: string): string | boolean;
  LMSCommit(empty: ""): string | boolean;
}

/** Characters of `cmi.suspend_data` (SCORM 1.2 run-time environment, CMIString4096). */
export const LONGEST_SUSPEND_DATA = 4096;
/** Characters of `cmi.core.lesson_location` (CMIString255). */
const LONGEST_LOCATION = 255;
/** Parent windows to try; the standard recommends seven. */
const HIGHEST = 7;

type Windowed = { readonly API?: unknown; readonly parent: Windowed; readonly opener?: Windowed | null };

/** Parents first, then the opener and its parents. Windows of another origin cannot be read and are skipped. */
export function findScormApi(start: Windowed): ScormApi | null {
  return climb(start) ?? (start.opener ? climb(start.opener) : null);
}

function climb(start: Windowed): ScormApi | null {
  let window = start;
  for (let level = 0; level <= HIGHEST; level++) {
    try {
      if (window.API) return window.API as ScormApi;
    } catch {
      return null;
    }
    if (window.parent === window) return null;
    window = window.parent;
  }
  return null;
}

/** `now`: s on any clock, for the time of this visit. */
export function scormRecord(api: ScormApi, now: () => number): RecordAdapter {
  const said = (answer: string | boolean): boolean => String(answer) === "true";
  const started = now();
  const open = said(api.LMSInitialize(""));
  let closed = !open;
  const sent = new Set<string>();
  if (open && ["not attempted", "unknown", ""].includes(api.LMSGetValue("cmi.core.lesson_status"))) {
    api.LMSSetValue("cmi.core.lesson_status", "incomplete");
    api.LMSCommit("");
  }
  return {
    kind: "scorm",
    load: async () => (open ? api.LMSGetValue("cmi.suspend_data") || null : null),
    report: async (report) =>
      !closed &&
      [...valuesOf(report), ...newTyped(report, sent, api)].every(([element, value]) =>
        said(api.LMSSetValue(element, value)),
      ) &&
      said(api.LMSCommit("")),
    close() {
      if (closed) return;
      closed = true;
      api.LMSSetValue("cmi.core.session_time", timespan(now() - started));
      api.LMSSetValue("cmi.core.exit", "suspend");
      api.LMSCommit("");
      api.LMSFinish("");
    },
    now: null,
    erase: null,
  };
}

function valuesOf({ text, place, score, completed }: Report): readonly (readonly [string, string])[] {
  const status = completed ? (passed(score) ? "passed" : "failed") : "incomplete";
  const resume = text.length <= LONGEST_SUSPEND_DATA ? ([["cmi.suspend_data", text]] as const) : [];
  return [
    ...resume,
    ["cmi.core.lesson_location", place.slice(0, LONGEST_LOCATION)],
    ["cmi.core.score.min", "0"],
    ["cmi.core.score.max", "100"],
    ["cmi.core.score.raw", String(Math.round(100 * shareRight(score)))],
    ["cmi.core.lesson_status", status],
  ];
}

/** Numeric interactions, each written once; they follow those of earlier visits. */
function newTyped(
  { typed }: Report,
  sent: Set<string>,
  api: ScormApi,
): readonly (readonly [string, string])[] {
  const unsent = typed.filter(({ lesson, step }) => !sent.has(`${lesson}#${step}`));
  if (unsent.length === 0) return [];
  const next = Number(api.LMSGetValue("cmi.interactions._count")) || 0;
  return unsent.flatMap(({ lesson, step, given, truth, right }, index) => {
    sent.add(`${lesson}#${step}`);
    const element = `cmi.interactions.${next + index}`;
    return [
      // An identifier has no blanks and no number sign.
      [`${element}.id`, `${lesson}_${step}`.slice(0, LONGEST_LOCATION)],
      [`${element}.type`, "numeric"],
      [`${element}.correct_responses.0.pattern`, plain(truth)],
      [`${element}.student_response`, plain(given)],
      [`${element}.result`, right ? "correct" : "wrong"],
    ] as const;
  });
}

/** CMIDecimal: no exponent. */
const plain = (value: number): string => String(Number(value.toFixed(6)));

/** CMITimespan, HHHH:MM:SS.SS */
export function timespan(seconds: number): string {
  const whole = Math.max(0, Math.min(seconds, 9999 * 3600));
  const two = (value: number) => String(Math.floor(value)).padStart(2, "0");
  const hundredths = two(Math.floor((whole % 1) * 100));
  return `${String(Math.floor(whole / 3600)).padStart(4, "0")}:${two((whole / 60) % 60)}:${two(whole % 60)}.${hundredths}`;
}
