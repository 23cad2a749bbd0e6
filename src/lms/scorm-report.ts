/** What SCORM 1.2 and SCORM 2004 report alike, each by its own names. */
import type { Score } from "../lesson/progress/progress.ts";
import { answerKey, type ReportedAnswer, shareRight } from "./record-adapter.ts";

export type Values = readonly (readonly [element: string, value: string])[];

/** The course system's run-time object, by either standard. */
export interface RunTime {
  readonly get: (element: string) => string;
  /** False where it is refused. */
  readonly set: (element: string, value: string) => boolean;
  readonly commit: () => boolean;
}

/** By SCORM 1.2 and 2004: "true" or "false". */
export const said = (answer: string | boolean): boolean => String(answer) === "true";

/**
 * Whether an empty value stands for none, by the error code of its reading (403 of SCORM 2004: never set). Any other leaves
 * open what an earlier visit left, which must not be overwritten.
 */
export const isNone = (error: string): boolean => ["0", "403"].includes(String(error));

/** Looking round or back is not to change what was recorded; a system without modes records. */
export const isRecorded = (mode: string): boolean => mode !== "browse" && mode !== "review";

/** @param interaction one answer as the values of the interaction of this index */
export function scormReport(
  runTime: RunTime,
  interaction: (answer: ReportedAnswer, index: number) => Values,
): (values: Values, answers: readonly ReportedAnswer[]) => boolean {
  const write = interactionWriter(runTime, interaction);
  return (values, answers) => {
    const accepted = values.map(([element, value]) => runTime.set(element, value));
    const kept = runTime.commit() && accepted.every(Boolean);
    // Course systems may have no interactions at all: they are not to cost the learner the record.
    if (write(answers)) runTime.commit();
    return kept;
  };
}

/** Each element once; what was refused is tried again with the next report. @returns whether something was written */
function interactionWriter(
  { get, set }: RunTime,
  interaction: (answer: ReportedAnswer, index: number) => Values,
): (answers: readonly ReportedAnswer[]) => boolean {
  const begun = new Map<string, Values>();
  const accepted = new Set<string>();
  let next = 0;
  const begin = (answer: ReportedAnswer): Values => {
    // They follow those of earlier visits.
    const index = Math.max(next, Number(get("cmi.interactions._count")) || 0);
    const values = interaction(answer, index);
    const [id] = values;
    if (!id || !set(...id)) return [];
    accepted.add(id[0]);
    begun.set(answerKey(answer), values);
    next = index + 1;
    return values;
  };
  return (answers) => {
    const before = accepted.size;
    for (const answer of answers)
      for (const [element, value] of begun.get(answerKey(answer)) ?? begin(answer))
        if (!accepted.has(element) && set(element, value)) accepted.add(element);
    return accepted.size > before;
  };
}

/** In per cent; none where nothing is asked. @param element such as `cmi.score` */
export const scoreValues = (element: string, score: Score): Values =>
  score.asked === 0
    ? []
    : [
        [`${element}.min`, "0"],
        [`${element}.max`, "100"],
        [`${element}.raw`, String(Math.round(100 * shareRight(score)))],
      ];
