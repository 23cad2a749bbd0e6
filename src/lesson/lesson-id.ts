/** The id in a lesson's text, whatever else stands there: two lessons with one id cannot both be listed. */
import { newId } from "./new-id.ts";

const LINE = /^id:[ \t]*([^\s#]*).*$/m;

/** "" where there is none */
export const lessonIdOf = (text: string): string => LINE.exec(text)?.[1] ?? "";

/** The same lesson under an id that none of these texts has. */
export function withFreeId(text: string, id: string, others: readonly string[]): string {
  return text.replace(LINE, `id: ${newId(id, others.map(lessonIdOf))}`);
}
