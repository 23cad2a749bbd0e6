/** Where a learner's record is kept: one interface, three implementations (this device, SCORM 1.2, cmi5). */
import type { Score } from "../lesson/progress.ts";
import type { TypedAnswer } from "../lesson/typed-answers.ts";

export interface Report {
  /** The whole record as text; given back by `load` at the next visit. */
  readonly text: string;
  /** Where to resume, `lesson#step`. */
  readonly place: string;
  readonly score: Score;
  /** Numbers typed in this visit so far; each is reported once. */
  readonly typed: readonly TypedAnswer[];
  /** Everything has been done. */
  readonly completed: boolean;
}

/** Events are named after the verbs of cmi5: initialized, completed, passed, failed, terminated. */
export interface RecordAdapter {
  readonly kind: "device" | "scorm" | "cmi5";
  /** What an earlier visit reported; null when there is nothing or it cannot be reached. Never rejects. */
  load(): Promise<string | null>;
  /** What stands there at this moment, where another tab may have written too; null where this visit alone writes. */
  readonly now: (() => string | null) | null;
  /** Saves at once, so that closing the device loses at most what came after. False when it could not be saved. */
  report(report: Report): Promise<boolean>;
  /** The visit ends. */
  close(): void;
  /** Erases everything; only a record on this device can be erased. */
  readonly erase: (() => void) | null;
}

/** Share of questions right at the first try from which a course counts as passed (common practice, no source). */
export const PASS_SHARE = 0.6;

/** 0 to 1; 0 when nothing was asked */
export const shareRight = ({ right, asked }: Score): number => (asked === 0 ? 0 : right / asked);

export const passed = (score: Score): boolean => shareRight(score) >= PASS_SHARE;
