/** Own lessons beside the kit's: each by itself, so that one that cannot be read takes no other with it. */
import type { Fault } from "../../sim/faults.ts";
import type { Lesson } from "../lesson.ts";
import { readLesson } from "../read/read.ts";
import type { OwnFile } from "./own-source.ts";

export interface OwnReading {
  readonly lessons: readonly Lesson[];
  readonly faults: readonly Fault[];
}

/** @param taken ids of the kit's lessons: a link to one must not open another */
export function readOwn(files: readonly OwnFile[], taken: ReadonlySet<string>): OwnReading {
  const lessons = new Map<string, Lesson>();
  const faults: Fault[] = [];
  for (const { file, text } of files) {
    const { value, faults: found } = readLesson(text, file);
    faults.push(...found);
    if (!value) continue;
    if (taken.has(value.id) || lessons.has(value.id))
      faults.push({
        path: `${file}:1`,
        found: `id "${value.id}", which another lesson has`,
        allowed: "an id of its own",
      });
    else lessons.set(value.id, value);
  }
  return { lessons: [...lessons.values()], faults };
}
