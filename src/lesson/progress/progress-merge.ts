/** Two records of one learner made one: the newest of each step, nothing lost. */
import {
  type Attempt,
  type LessonProgress,
  MAX_WRITTEN,
  type Progress,
  type QuizProgress,
} from "./progress.ts";

/** Where neither is newer, `ours` stays. */
export function mergeProgress(ours: Progress, theirs: Progress): Progress {
  const latest = ours.latest ?? theirs.latest;
  const reader = ours.reader ?? theirs.reader;
  const quiz = ours.quiz && theirs.quiz ? mergeQuiz(ours.quiz, theirs.quiz) : (ours.quiz ?? theirs.quiz);
  return {
    version: ours.version,
    ...(latest === undefined ? {} : { latest }),
    ...(reader === undefined ? {} : { reader }),
    ...(quiz ? { quiz } : {}),
    lessons: mergeEach(ours.lessons, theirs.lessons, mergeLesson),
  };
}

/** As above, with a record from another device: of two texts written to one task neither knows the other, and both stay. */
export function takeProgress(ours: Progress, theirs: Progress): Progress {
  return { ...mergeProgress(ours, theirs), lessons: mergeEach(ours.lessons, theirs.lessons, takeLesson) };
}

export function takeLesson(ours: LessonProgress, theirs: LessonProgress): LessonProgress {
  const merged = mergeLesson(ours, theirs);
  if (!ours.written || !theirs.written) return merged;
  return { ...merged, written: mergeEach(ours.written, theirs.written, bothTexts) };
}

function bothTexts(ours: string, theirs: string): string {
  if (ours.includes(theirs)) return ours;
  return theirs.includes(ours) ? theirs : `${ours}\n\n${theirs}`.slice(0, MAX_WRITTEN);
}

function mergeLesson(ours: LessonProgress, theirs: LessonProgress): LessonProgress {
  const written = { ...theirs.written, ...ours.written };
  return {
    step: ours.step,
    seen: [...new Set([...ours.seen, ...theirs.seen])],
    finished: ours.finished || theirs.finished,
    answers: mergeEach(ours.answers, theirs.answers, newerAttempt),
    ...(Object.keys(written).length > 0 ? { written } : {}),
    recalled: mergeEach(ours.recalled, theirs.recalled, newerRecall),
  };
}

type Recall = LessonProgress["recalled"][string];

export const newerRecall = (ours: Recall, theirs: Recall): Recall => (theirs.day > ours.day ? theirs : ours);

/** Of one day, the one that was tried more often came later. A note is kept from either. */
function newerAttempt(ours: Attempt, theirs: Attempt): Attempt {
  const later = theirs.day > ours.day || (theirs.day === ours.day && theirs.tries > ours.tries);
  const [newer, older] = later ? [theirs, ours] : [ours, theirs];
  return newer.note === undefined && older.note !== undefined ? { ...newer, note: older.note } : newer;
}

function mergeQuiz(ours: QuizProgress, theirs: QuizProgress): QuizProgress {
  const results = unionOf(ours.results, theirs.results);
  if (ours.round !== theirs.round) return { ...(ours.round > theirs.round ? ours : theirs), results };
  return { ...ours, given: { ...theirs.given, ...ours.given }, results };
}

type Results = QuizProgress["results"];

/** In order of day. Two alike of one side are two rounds; what both have alike is one. */
function unionOf(ours: Results, theirs: Results): Results {
  const unpaired = new Map<string, number>();
  const keyOf = ({ day, right, asked }: Results[number]) => `${right} ${asked} ${day}`;
  for (const result of ours) unpaired.set(keyOf(result), (unpaired.get(keyOf(result)) ?? 0) + 1);
  const others = theirs.filter((result) => {
    const left = unpaired.get(keyOf(result)) ?? 0;
    if (left > 0) unpaired.set(keyOf(result), left - 1);
    return left === 0;
  });
  return [...ours, ...others].sort((a, b) => a.day.localeCompare(b.day));
}

export function mergeEach<T>(
  ours: Readonly<Record<string, T>>,
  theirs: Readonly<Record<string, T>>,
  merge: (ours: T, theirs: T) => T,
): Record<string, T> {
  const merged: Record<string, T> = { ...theirs };
  for (const [key, our] of Object.entries(ours)) {
    const their = Object.hasOwn(theirs, key) ? theirs[key] : undefined;
    merged[key] = their === undefined ? our : merge(our, their);
  }
  return merged;
}
