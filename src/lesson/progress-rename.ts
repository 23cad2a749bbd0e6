/** What a learner did in a lesson that has another id now. */
import type { Progress } from "./progress.ts";

export function namedInProgress(progress: Progress, lesson: string): boolean {
  return JSON.stringify(renamedInProgress(progress, lesson, "")) !== JSON.stringify(progress);
}

export function renamedInProgress(progress: Progress, old: string, id: string): Progress {
  const name = (each: string) => (each === old ? id : each);
  const key = (each: string) => (each.startsWith(`${old}#`) ? id + each.slice(old.length) : each);
  const { latest, quiz, lessons } = progress;
  return {
    ...progress,
    ...(latest === undefined ? {} : { latest: name(latest) }),
    ...(quiz === undefined ? {} : { quiz: { ...quiz, given: withKeys(quiz.given, key) } }),
    lessons: Object.fromEntries(
      Object.entries(withKeys(lessons, name)).map(([each, lesson]) => [
        each,
        { ...lesson, recalled: withKeys(lesson.recalled, key) },
      ]),
    ),
  };
}

const withKeys = <Value>(
  record: Readonly<Record<string, Value>>,
  rename: (key: string) => string,
): Record<string, Value> =>
  Object.fromEntries(Object.entries(record).map(([key, value]) => [rename(key), value]));
