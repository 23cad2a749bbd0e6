/** What a learner did in a lesson that has another id now. */
import type { Progress } from "./progress.ts";
import { mergeEach, newerRecall, takeLesson } from "./progress-merge.ts";

export function namedInProgress({ latest, quiz, lessons }: Progress, lesson: string): boolean {
  const records = [quiz?.given ?? {}, ...Object.values(lessons).map(({ recalled }) => recalled)];
  const isOfLesson = (key: string) => key.startsWith(`${lesson}#`);
  return (
    latest === lesson ||
    Object.hasOwn(lessons, lesson) ||
    records.some((record) => Object.keys(record).some(isOfLesson))
  );
}

/** What stands under the new id already is merged with it, as a record from a file is. */
export function renamedInProgress(progress: Progress, old: string, id: string): Progress {
  const name = (each: string) => (each === old ? id : each);
  const key = (each: string) => (each.startsWith(`${old}#`) ? id + each.slice(old.length) : each);
  const { latest, quiz, lessons } = progress;
  const followed = Object.entries(lessons).map(([each, lesson]) => [
    each,
    { ...lesson, recalled: withKeys(lesson.recalled, key, newerRecall) },
  ]);
  return {
    ...progress,
    ...(latest === undefined ? {} : { latest: name(latest) }),
    ...(quiz === undefined ? {} : { quiz: { ...quiz, given: withKeys(quiz.given, key, (ours) => ours) } }),
    lessons: withKeys(Object.fromEntries(followed), name, takeLesson),
  };
}

/** @param merge what was renamed, with what had that key before */
function withKeys<Value>(
  record: Readonly<Record<string, Value>>,
  rename: (key: string) => string,
  merge: (ours: Value, theirs: Value) => Value,
): Record<string, Value> {
  const part = (isRenamed: boolean): Record<string, Value> =>
    Object.fromEntries(
      Object.entries(record)
        .filter(([key]) => (rename(key) !== key) === isRenamed)
        .map(([key, value]) => [rename(key), value]),
    );
  return mergeEach(part(true), part(false), merge);
}
