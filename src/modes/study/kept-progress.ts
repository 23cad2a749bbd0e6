/** The learner's progress while the page is open, and where it is kept: this device or a course system. */
import { type ReadonlySignal, signal } from "@preact/signals";
import {
  isNewerProgress,
  NO_PROGRESS,
  type Progress,
  scoreOf,
  writeProgress,
} from "../../lesson/progress.ts";
import { mergeProgress } from "../../lesson/progress-merge.ts";
import { packProgress, unpackProgress } from "../../lesson/progress-pack.ts";
import { typedAnswers } from "../../lesson/typed-answers.ts";
import { onOtherTab } from "../../lms/device.ts";
import { openRecord } from "../../lms/open.ts";
import type { RecordAdapter } from "../../lms/record-adapter.ts";
import { LONGEST_SUSPEND_DATA } from "../../lms/scorm.ts";
import { present } from "../../sim/checked/present.ts";
import { drawReader } from "../reader.ts";

/** Every learner has a number from the start; it is kept with what is done, and goes with it. */
type LearnerProgress = Progress & { readonly reader: number };

export interface KeptProgress {
  readonly voice: RecordAdapter["kind"];
  readonly progress: ReadonlySignal<LearnerProgress>;
  /** False once something could not be kept. */
  readonly keeps: ReadonlySignal<boolean>;
  /** `place`: where to resume; `lessons`: ids of all that are to be finished. */
  keep(progress: Progress, place: string, lessons: readonly string[]): void;
  /** null where the course system keeps the record. */
  readonly erase: (() => void) | null;
}

export async function openProgress(): Promise<KeptProgress> {
  const voice = openRecord();
  const found = await voice.load();
  const earlier = unpackProgress(found);
  const progress = signal(withReader(earlier));
  let newer = isNewerProgress(found);
  const keeps = signal(!newer);
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
    voice: voice.kind,
    progress,
    keeps,
    keep(given, place, lessons) {
      // An open lesson knows only its own steps; what another tab did in it is in what is kept.
      const next = withReader(mergeProgress({ ...given, reader: progress.peek().reader }, progress.peek()));
      progress.value = next;
      if (newer) return;
      const text = voice.kind === "scorm" ? packProgress(next, LONGEST_SUSPEND_DATA) : writeProgress(next);
      const completed = lessons.length > 0 && lessons.every((id) => next.lessons[id]?.finished);
      const typed = typedAnswers(next, earlier);
      void voice.report({ text, place, score: scoreOfAll(next), typed, completed }).then((kept) => {
        keeps.value = kept;
      });
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

const withReader = (progress: Progress): LearnerProgress => ({
  ...progress,
  reader: progress.reader ?? drawReader(),
});

export function scoreOfAll(progress: Progress) {
  const scores = Object.values(progress.lessons).map(scoreOf);
  return {
    right: scores.reduce((sum, { right }) => sum + right, 0),
    asked: scores.reduce((sum, { asked }) => sum + asked, 0),
  };
}
