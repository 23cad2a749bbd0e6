/** One answered question as `cmi.interactions.n`, by SCORM 1.2 and by SCORM 2004. Constants from memory of the specifications. */
import type { ReportedAnswer } from "./record-adapter.ts";
import type { Values } from "./scorm-report.ts";

/** Characters of an identifier: CMIIdentifier of 1.2. */
const LONGEST_ID = 255;
/** Characters of a description in SCORM 2004. */
const LONGEST_DESCRIPTION = 250;
/** SCORM 1.2 names a choice by one sign. */
const SIGNS = "abcdefghijklmnopqrstuvwxyz0123456789";

/** An identifier has no blanks and no number sign. */
const nameOf = ({ lesson, step }: ReportedAnswer, between: string): string =>
  `${lesson}${between}${step}`.slice(0, LONGEST_ID);

/** No exponent. */
const plain = (value: number): string => String(Number(value.toFixed(6)));

/** null where one of them has no sign: not among the options of today's lesson, or beyond the last sign */
function signsOf({ options }: ReportedAnswer, ids: string | number | readonly string[]): string | null {
  if (typeof ids === "number") return plain(ids);
  const signs = (typeof ids === "string" ? [ids] : ids).map((wanted) =>
    SIGNS.charAt(options.findIndex(({ id }) => id === wanted)),
  );
  return signs.includes("") ? null : signs.join(",");
}

/** `index`: how many there are already; `stamp`: RFC 3339, UTC */
export function interaction12(answer: ReportedAnswer, index: number, stamp: string): Values {
  const element = `cmi.interactions.${index}`;
  const given = signsOf(answer, answer.given);
  const { correct } = answer;
  const pattern =
    correct === null
      ? null
      : typeof correct === "object" && "low" in correct
        ? plain((correct.low + correct.high) / 2)
        : signsOf(answer, correct);
  return [
    [`${element}.id`, nameOf(answer, "_")],
    [`${element}.time`, stamp.slice(11, 19)],
    [`${element}.type`, answer.kind],
    ...(pattern === null ? [] : [[`${element}.correct_responses.0.pattern`, pattern] as const]),
    ...(given === null ? [] : [[`${element}.student_response`, given] as const]),
    [`${element}.result`, answer.right ? "correct" : "wrong"],
  ];
}

/** A time zone may follow a fraction of a second only. */
export function interaction2004(answer: ReportedAnswer, index: number, stamp: string): Values {
  const element = `cmi.interactions.${index}`;
  const { correct } = answer;
  return [
    [`${element}.id`, `urn:lungward:${nameOf(answer, ":")}`],
    [`${element}.type`, answer.kind],
    [`${element}.timestamp`, `${stamp.slice(0, 22)}Z`],
    [`${element}.description`, `{lang=${answer.language}}${answer.asked}`.slice(0, LONGEST_DESCRIPTION)],
    ...(correct === null ? [] : [[`${element}.correct_responses.0.pattern`, patternOf(correct)] as const]),
    [`${element}.learner_response`, patternOf(answer.given)],
    [`${element}.result`, answer.right ? "correct" : "incorrect"],
  ];
}

/** As SCORM 2004 and xAPI both write it. */
export function patternOf(value: NonNullable<ReportedAnswer["correct"]> | number): string {
  if (typeof value === "number") return plain(value);
  if (typeof value === "string") return value;
  return "low" in value ? `${plain(value.low)}[:]${plain(value.high)}` : value.join("[,]");
}
