/** Two records of one learner made one: the newest of each step, nothing lost. */
import type { Attempt, LessonProgress, Progress, QuizProgress } from "./progress.ts";

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

function mergeLesson(ours: LessonProgress, theirs: LessonProgress): LessonProgress {
  const written = { ...theirs.written, ...ours.written };
  return {
    step: ours.step,
    seen: [...new Set([...ours.seen, ...theirs.seen])],
    finished: ours.finished || theirs.finished,
    answers: mergeEach(ours.answers, theirs.answers, newerAttempt),
    ...(Object.keys(written).length > 0 ? { written } : {}),
    recalled: mergeEach(ours.recalled, theirs.recalled, (a, b) => (b.day > a.day ? b : a)),
  };
}

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
  const unpaired = [...ours];
  const others = theirs.filter((result) => {
    const pair = unpaired.findIndex(
      ({ day, right, asked }) => day === result.day && right === result.right && asked === result.asked,
    );
    if (pair >= 0) unpaired.splice(pair, 1);
    return pair < 0;
  });
  return [...ours, ...others].sort((a, b) => a.day.localeCompare(b.day));
}

function mergeEach<T>(
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
