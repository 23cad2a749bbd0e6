/** Names of files that say what is in them: subject, language and day. */
import { slugOf } from "../../lesson/read/new-id.ts";

/** `lungward-01-one-pump-de-2026-11-29.pptx`; letters with marks become plain ones, so that any system keeps the name. */
export const fileName = (subject: string, language: string, day: Date, extension: string): string =>
  `${nameOf(subject, language, day)}.${extension}`;

/** Of a file whose kind its writer knows. */
export function nameOf(subject: string, language: string, day: Date): string {
  return ["lungward", slugOf(subject, 60), language, day.toISOString().slice(0, 10)]
    .filter(Boolean)
    .join("-");
}
