/** The id in a lesson's text, whatever else stands there: two lessons with one id cannot both be listed. */
import { LIMITS } from "../format/limits.ts";
import { newId } from "./new-id.ts";

const LINE = /^id:[ \t]*([^\s#]*).*$/m;

const unquoted = (value: string): string => value.replace(/^(["'])(.*)\1\s*$/, "$2");

/** Without its quotes, "" where there is none. */
export const lessonIdOf = (text: string): string => unquoted(LINE.exec(text)?.[1] ?? "");

/** The id's line as it is written, up to what follows the id; "" where there is none. */
export const idAsWritten = (text: string): string => /^id:[ \t]*[^\s#]*/m.exec(text)?.[0] ?? "";

/** As a list names a text that nobody has read yet: without its quotes, "" where there is none. */
export const lessonTitleOf = (text: string): string =>
  unquoted(/^title:[ \t]*(.*)$/m.exec(text.slice(0, LIMITS.part))?.[1] ?? "");

/** The same lesson under an id that none of these texts has. */
export function withFreeId(text: string, id: string, others: readonly string[]): string {
  return text.replace(LINE, `id: ${newId(id, others.map(lessonIdOf))}`);
}
