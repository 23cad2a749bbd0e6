/** Progress as a short text, for course systems that keep few characters: deflated JSON in base 64, with less and less if need be. */
import { deflateSync, inflateSync, strFromU8, strToU8 } from "fflate";
import { bytesOfBase64 } from "./base64.ts";
import { NO_PROGRESS, type Progress, readProgress, writeProgress } from "./progress.ts";

/** At most `most` characters. What is dropped first when space is short: the learner's notes, oldest first, then the numbers that stood in questions with what was right, then what was written and which steps were seen. */
export function packProgress(progress: Progress, most: number): string {
  let shorter: Progress | null = progress;
  while (shorter) {
    const text = pack(shorter);
    if (text.length <= most) return text;
    shorter = withoutOldestNote(shorter);
  }
  const bare = pack(withoutNumbersAndTruth(progress));
  if (bare.length <= most) return bare;
  const text = pack(withoutSeen(withoutNumbersAndTruth(progress)));
  return text.length <= most ? text : pack(NO_PROGRESS);
}

const pack = (progress: Progress): string => {
  const bytes = deflateSync(strToU8(writeProgress(progress)), { level: 9 });
  return btoa(Array.from(bytes, (byte) => String.fromCharCode(byte)).join(""));
};

/** The text that was packed, or stands plain; null for anything else. */
export function unpackText(text: string | null): string | null {
  if (text === null || text.startsWith("{")) return text;
  try {
    return strFromU8(inflateSync(bytesOfBase64(text)));
  } catch {
    return null;
  }
}

/** Packed or plain; anything else reads as none. */
export const unpackProgress = (text: string | null): Progress => readProgress(unpackText(text));

type Lessons = Progress["lessons"];
const eachLesson = (
  progress: Progress,
  change: (lesson: Lessons[string], id: string) => Lessons[string],
): Progress => ({
  ...progress,
  lessons: Object.fromEntries(
    Object.entries(progress.lessons).map(([id, lesson]) => [id, change(lesson, id)]),
  ),
});

/** null when there is no note left. */
function withoutOldestNote(progress: Progress): Progress | null {
  const noted = Object.entries(progress.lessons).flatMap(([lesson, { answers }]) =>
    Object.entries(answers).flatMap(([step, { note, day }]) => (note ? [{ lesson, step, day }] : [])),
  );
  const oldest = noted.sort((a, b) => a.day.localeCompare(b.day))[0];
  return oldest
    ? withoutNotes(progress, (lesson, step) => lesson === oldest.lesson && step === oldest.step)
    : null;
}

const withoutNotes = (progress: Progress, gone: (lesson: string, step: string) => boolean): Progress =>
  eachLesson(progress, (lesson, id) => ({
    ...lesson,
    answers: Object.fromEntries(
      Object.entries(lesson.answers).map(([step, { note, ...rest }]) => [
        step,
        note === undefined || gone(id, step) ? rest : { ...rest, note },
      ]),
    ),
  }));

/** The record to hand in asks the model for both again. */
const withoutNumbersAndTruth = (progress: Progress): Progress =>
  eachLesson(
    withoutNotes(progress, () => true),
    (lesson) => ({
      ...lesson,
      answers: Object.fromEntries(
        Object.entries(lesson.answers).map(([step, { numbers: _, truth: __, ...rest }]) => [step, rest]),
      ),
    }),
  );

const withoutSeen = (progress: Progress): Progress =>
  eachLesson(progress, ({ written: _, ...lesson }) => ({ ...lesson, seen: [] }));
