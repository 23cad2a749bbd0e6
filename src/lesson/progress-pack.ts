/** Progress as a short text, for course systems that keep few characters: deflated JSON in base 64, with less and less if need be. */
import { deflateSync, inflateSync, strFromU8, strToU8 } from "fflate";
import { NO_PROGRESS, type Progress, readProgress, writeProgress } from "./progress.ts";

/** At most `most` characters. What goes first when room is short: the learner's notes, then which steps were seen. */
export function packProgress(progress: Progress, most: number): string {
  for (const shorter of [(each: Progress) => each, withoutNotes, withoutSeen]) {
    const text = pack(shorter(progress));
    if (text.length <= most) return text;
  }
  return pack(NO_PROGRESS);
}

const pack = (progress: Progress): string => {
  const bytes = deflateSync(strToU8(writeProgress(progress)), { level: 9 });
  return btoa(Array.from(bytes, (byte) => String.fromCharCode(byte)).join(""));
};

/** Packed or plain; anything else reads as none. */
export function unpackProgress(text: string | null): Progress {
  if (text === null || text.startsWith("{")) return readProgress(text);
  try {
    const bytes = Uint8Array.from(atob(text), (sign) => sign.charCodeAt(0));
    return readProgress(strFromU8(inflateSync(bytes)));
  } catch {
    return NO_PROGRESS;
  }
}

type Lessons = Progress["lessons"];
const eachLesson = (progress: Progress, change: (lesson: Lessons[string]) => Lessons[string]): Progress => ({
  ...progress,
  lessons: Object.fromEntries(Object.entries(progress.lessons).map(([id, lesson]) => [id, change(lesson)])),
});

const withoutNotes = (progress: Progress): Progress =>
  eachLesson(progress, (lesson) => ({
    ...lesson,
    answers: Object.fromEntries(
      Object.entries(lesson.answers).map(([id, { note: _, ...rest }]) => [id, rest]),
    ),
  }));

const withoutSeen = (progress: Progress): Progress =>
  eachLesson(withoutNotes(progress), (lesson) => ({ ...lesson, seen: [] }));
