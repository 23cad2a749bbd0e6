/** The learner's progress while the page is open, and where it is kept: this device or a course system. */
import { type ReadonlySignal, signal } from "@preact/signals";
import type { Lesson } from "../../lesson/lesson.ts";
import { type Course, courseScore, doneOf } from "../../lesson/library/lesson-course.ts";
import {
  isNewerProgress,
  NO_PROGRESS,
  type Progress,
  scoreOf,
  writeProgress,
} from "../../lesson/progress/progress.ts";
import { mergeProgress } from "../../lesson/progress/progress-merge.ts";
import { packProgress, unpackProgress, unpackText } from "../../lesson/progress/progress-pack.ts";
import { onOtherTab } from "../../lms/device.ts";
import { openRecord } from "../../lms/open.ts";
import { PASS_SHARE, type RecordAdapter, type Report } from "../../lms/record-adapter.ts";
import { present } from "../../sim/checked/present.ts";
import { drawReader } from "../reader.ts";
import { reportedAnswers } from "./reported-answers.ts";

/** Every learner has a number from the start; it is kept with what is done, and goes with it. */
type LearnerProgress = Progress & { readonly reader: number };

export interface KeptProgress {
  /** Looking: the course system records nothing of this visit. */
  readonly voice: RecordAdapter["kind"] | "looking";
  readonly progress: ReadonlySignal<LearnerProgress>;
  /** False once something could not be kept. */
  readonly keeps: ReadonlySignal<boolean>;
  /** `place`: where to resume; `lessons`: all that are to be finished. */
  keep(progress: Progress, place: string, lessons: readonly Lesson[]): void;
  /** Where the course system wants to have who leaves; null where it says nothing. */
  readonly wayBack: string | null;
  /** Ends the visit, after the last report. */
  end(): Promise<void>;
  /** null where the course system keeps the record. */
  readonly erase: (() => void) | null;
}

/** From what share a course is passed, and when it is completed. */
export type CourseRules = Pick<Course, "passMark" | "completedWhen">;

/** ms that who leaves waits for a course system that does not answer */
const LONGEST_WAIT = 5000;

const USUAL: CourseRules = { passMark: PASS_SHARE, completedWhen: "finished" };

export async function openProgress(
  voice: RecordAdapter = openRecord(),
  rules: CourseRules = USUAL,
): Promise<KeptProgress> {
  const found = await voice.load();
  const earlier = unpackProgress(found);
  const progress = signal(withReader(earlier));
  let newer = isNewerProgress(unpackText(found));
  const keeps = signal(!newer);
  let reported: Promise<unknown> = Promise.resolve();
  addEventListener("pagehide", () => voice.close());
  if (voice.kind === "device") {
    onOtherTab((text) => {
      newer = isNewerProgress(text);
      keeps.value = !newer;
      const other = unpackProgress(text);
      // Nothing there: the other tab erased it, and this one must not bring it back.
      progress.value = withReader(text === null ? NO_PROGRESS : mergeProgress(progress.peek(), other));
    });
  }
  return {
    voice: voice.records() ? voice.kind : "looking",
    progress,
    keeps,
    keep(given, place, lessons) {
      // An open lesson knows only its own steps; what another tab did is in what is kept, be its message here yet or not.
      const standing = voice.now?.() ?? null;
      newer ||= isNewerProgress(standing);
      const known = mergeProgress(progress.peek(), unpackProgress(standing));
      const next = withReader(mergeProgress({ ...given, reader: progress.peek().reader }, known));
      progress.value = next;
      if (newer) {
        keeps.value = false;
        return;
      }
      reported = voice.report({ ...reportOf(next, earlier, lessons, voice, rules), place }).then((kept) => {
        keeps.value = kept;
      });
    },
    wayBack: voice.wayBack(),
    async end() {
      const waited = new Promise((done) => setTimeout(done, LONGEST_WAIT));
      await Promise.race([reported.then(() => voice.close()), waited]);
    },
    erase:
      voice.erase &&
      (() => {
        present(voice.erase)();
        newer = false;
        keeps.value = true;
        progress.value = withReader(NO_PROGRESS);
      }),
  };
}

function reportOf(
  now: Progress,
  earlier: Progress,
  lessons: readonly Lesson[],
  { kind, longest }: RecordAdapter,
  { passMark, completedWhen }: CourseRules,
): Omit<Report, "place"> {
  const done = doneOf(completedWhen, now, lessons);
  return {
    text: longest === null ? writeProgress(now) : packProgress(now, longest),
    score: courseScore(now, lessons),
    passMark,
    answers: kind === "device" ? [] : reportedAnswers(now, earlier, lessons),
    progress: done,
    completed: done === 1,
  };
}

const withReader = (progress: Progress): LearnerProgress => ({
  ...progress,
  reader: progress.reader ?? drawReader(),
});

/** What was answered so far, repeats too: the learner's own look back, not the course's mark. */
export function scoreOfAll(progress: Progress) {
  const scores = Object.values(progress.lessons).map(scoreOf);
  return {
    right: scores.reduce((sum, { right }) => sum + right, 0),
    asked: scores.reduce((sum, { asked }) => sum + asked, 0),
  };
}
