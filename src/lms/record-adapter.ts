/** Where a learner's record is kept: one interface, four implementations (this device, SCORM 1.2, SCORM 2004, cmi5). */
import type { Score } from "../lesson/progress/progress.ts";

/** One answered question, in the words of the lesson's language. */
export interface ReportedAnswer {
  readonly lesson: string;
  readonly step: string;
  readonly kind: "choice" | "sequencing" | "numeric";
  /** With its numbers. */
  readonly asked: string;
  /** BCP 47 tag of all words here. */
  readonly language: string;
  /** What could be chosen or put in order; none of a number. */
  readonly options: readonly { readonly id: string; readonly say: string }[];
  /** At the first try; a number in the question's unit. */
  readonly given: string | number | readonly string[];
  /** null where no one answer is right, such as a control's value that meets a goal. */
  readonly correct: string | readonly string[] | { readonly low: number; readonly high: number } | null;
  readonly right: boolean;
}

export interface Report {
  /** The whole record as text; given back by `load` at the next visit. */
  readonly text: string;
  /** Where to resume, `lesson#step`. */
  readonly place: string;
  /** Of all the course's questions. */
  readonly score: Score;
  /** Share right from which it is passed; null where nothing is to be passed. A course system's own comes first. */
  readonly passMark: number | null;
  /** All of this visit so far; each is sent once. */
  readonly answers: readonly ReportedAnswer[];
  /** 0 to 1: how much of the course is done. */
  readonly progress: number;
  /** Everything has been done. */
  readonly completed: boolean;
}

/** Events are named after the verbs of cmi5: initialized, completed, passed, failed, terminated. */
export interface RecordAdapter {
  /** Over: a course system's visit that has ended. */
  readonly kind: "device" | "scorm" | "cmi5" | "over";
  /** Characters that `text` may have; null = any number. */
  readonly longest: number | null;
  /** What an earlier visit reported; null when there is nothing or it cannot be reached. Never rejects. */
  load(): Promise<string | null>;
  /** False where who came only looks round or back (Browse, Review), so that nothing is recorded; known once loaded. */
  records(): boolean;
  /** What stands there at this moment, where another tab may have written too; null where this visit alone writes. */
  readonly now: (() => string | null) | null;
  /** Saves at once, so that closing the device loses at most what came after. False when it could not be saved. */
  report(report: Report): Promise<boolean>;
  /** The visit ends. Resolved once the course system knows; never rejects. */
  close(): Promise<void>;
  /** Where the course system wants to have who leaves; null where it says nothing. Known once loaded. */
  wayBack(): string | null;
  /** Erases everything; only a record on this device can be erased. */
  readonly erase: (() => void) | null;
}

/** What a visit needs to know of time. */
export interface VisitClock {
  /** s on any clock, for the time of this visit */
  readonly now: () => number;
  /** The moment as RFC 3339, UTC. */
  readonly stamp: () => string;
}

/** Share of questions right at the first try from which a course counts as passed unless it says otherwise (common practice, no source). */
export const PASS_SHARE = 0.6;

/** 0 to 1; 0 when nothing was asked */
export const shareRight = ({ right, asked }: Score): number => (asked === 0 ? 0 : right / asked);

/** null where nothing is to be passed, or nothing is asked */
export const passed = (score: Score, mark: number | null): boolean | null =>
  mark === null || score.asked === 0 ? null : shareRight(score) >= mark;

/** A key for "sent once". */
export const answerKey = ({ lesson, step }: ReportedAnswer): string => `${lesson}#${step}`;
