/** What one learner did on this device: plain data, stored and erased by the page; any text can be read back. */
import * as v from "valibot";

/** Characters of a written task. */
export const MAX_WRITTEN = 1000;

const attempt = v.strictObject({
  /** What was given at first. */
  given: v.union([v.string(), v.number(), v.array(v.string())]),
  /** At the first try; null for a prediction not yet judged. */
  right: v.nullable(v.boolean()),
  /** Live numbers in the question as they stood when it was first answered, by what the lesson writes for them; with a band: value, low, high. */
  numbers: v.optional(
    v.record(
      v.string(),
      v.union([v.number(), v.pipe(v.tuple([v.number(), v.number(), v.number()]), v.readonly())]),
    ),
  ),
  /** Of a typed number, in its unit: what the model had then, how far from it still counted, the mistake that was recognised. */
  typed: v.optional(
    v.strictObject({ truth: v.number(), within: v.number(), mistake: v.optional(v.string()) }),
  ),
  /** Of a wrong choice or order: what was right then. */
  truth: v.optional(v.union([v.string(), v.array(v.string())])),
  tries: v.pipe(v.number(), v.integer(), v.minValue(1)),
  /** ISO 8601 day of the last try. */
  day: v.string(),
  /** "What surprised you?", in the learner's words. */
  note: v.optional(v.pipe(v.string(), v.maxLength(500))),
});

const lessonProgress = v.strictObject({
  /** Step to resume at. */
  step: v.string(),
  seen: v.array(v.string()),
  finished: v.boolean(),
  /** By question: `step`. */
  answers: v.record(v.string(), attempt),
  /** By step, in the learner's own words. */
  written: v.optional(v.record(v.string(), v.pipe(v.string(), v.maxLength(MAX_WRITTEN)))),
  /** By question asked again at the end or on a later day: `lesson#step`; right at the last asking. */
  recalled: v.record(v.string(), v.strictObject({ right: v.boolean(), day: v.string() })),
});

const quiz = v.strictObject({
  /** From 1: each draws other questions. */
  round: v.pipe(v.number(), v.integer(), v.minValue(1)),
  /** Right or not, by `lesson#step`, in this round. */
  given: v.record(v.string(), v.boolean()),
  /** Of the rounds that were finished. */
  results: v.array(v.strictObject({ day: v.string(), right: v.number(), asked: v.number() })),
});

export const progressSchema = v.strictObject({
  version: v.literal(1),
  /** Lesson that was open last. */
  latest: v.optional(v.string()),
  /** By which the answers are set out for this learner. */
  reader: v.optional(v.number()),
  quiz: v.optional(quiz),
  lessons: v.record(v.string(), lessonProgress),
});

export type Attempt = v.InferOutput<typeof attempt>;
export type LessonProgress = v.InferOutput<typeof lessonProgress>;
export type QuizProgress = v.InferOutput<typeof quiz>;
export type Progress = v.InferOutput<typeof progressSchema>;

export const NO_PROGRESS: Progress = { version: 1, lessons: {} };

export const writeProgress = (value: Progress): string => JSON.stringify(value);

/** Anything that is no progress of ours reads as none. */
export function readProgress(text: string | null): Progress {
  if (text === null) return NO_PROGRESS;
  try {
    const result = v.safeParse(progressSchema, JSON.parse(text));
    return result.success ? result.output : NO_PROGRESS;
  } catch {
    return NO_PROGRESS;
  }
}

/** Written by a version to come: not ours to overwrite. */
export function isNewerProgress(text: string | null): boolean {
  try {
    const { version } = JSON.parse(text ?? "{}") ?? {};
    return typeof version === "number" && version > NO_PROGRESS.version;
  } catch {
    return false;
  }
}

export const withLesson = (value: Progress, id: string, lesson: LessonProgress): Progress => ({
  ...value,
  latest: id,
  lessons: { ...value.lessons, [id]: lesson },
});

export interface Score {
  readonly right: number;
  readonly asked: number;
}

/** Questions answered at the first try, and those recalled: what was understood, never time spent. */
export function scoreOf({ answers, recalled }: LessonProgress): Score {
  const judged = [...Object.values(answers), ...Object.values(recalled)].filter(
    ({ right }) => right !== null,
  );
  return { right: judged.filter(({ right }) => right).length, asked: judged.length };
}

/** Questions worth asking at the next visit, `lesson#step`: missed ones first, then those not asked since; none from today. */
export function dueForRecall(value: Progress, today: string, most = 3): readonly string[] {
  const asked = latestRecalls(value);
  const due: { key: string; missed: boolean; day: string }[] = [];
  for (const [id, lesson] of Object.entries(value.lessons)) {
    for (const [step, { right, day }] of Object.entries(lesson.answers)) {
      const again = asked.get(`${id}#${step}`);
      const last = again ?? { right: right ?? false, day };
      if (last.day < today && !(again?.right && right))
        due.push({ key: `${id}#${step}`, missed: !last.right, day: last.day });
    }
  }
  due.sort(
    (a, b) => Number(b.missed) - Number(a.missed) || a.day.localeCompare(b.day) || a.key.localeCompare(b.key),
  );
  return due.slice(0, most).map(({ key }) => key);
}

/** By question, when it was last asked again, in whichever lesson that was. */
function latestRecalls({ lessons }: Progress): ReadonlyMap<string, LessonProgress["recalled"][string]> {
  const latest = new Map<string, LessonProgress["recalled"][string]>();
  for (const { recalled } of Object.values(lessons)) {
    for (const [key, each] of Object.entries(recalled)) {
      const known = latest.get(key);
      if (!known || each.day >= known.day) latest.set(key, each);
    }
  }
  return latest;
}
